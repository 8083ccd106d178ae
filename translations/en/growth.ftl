### Weight and output against age: labels, cautions and questions.

## Labels of figures; the value stands beside or below.


## $z "-0.59".


## A centile: a number as "27.8", or outside what is shown as a number.


## Expected nappies. $wet and $dirty are counts, $from and $to days of life.


## Cautions, beside the figures they are about.

caution-uk-early-days = UK charts plot the first two weeks on a birth standard; this is the WHO standard.
caution-preterm = Born before 37 weeks: the WHO standard is for babies born at term.
caution-clothed = The last weight was taken in clothes: the true one is lower.
caution-after-feed = The last weight was taken just after a feed.
caution-asked = A weight is to be checked.

## Why a weight is asked about; the weight stands beside it.

