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

question-implausible = Unlikely for this age. Check the weight, the birth time and the sex.
question-factor-of-ten = About ten times more or less than the weight before. Check the digits.
question-pounds = As if pounds and kilograms had been mixed up. Check the unit.
question-swapped = Lighter after the feed than before it. Check whether the two were swapped.
question-before-birth = Taken before birth. Check both times.
question-after-now = Taken later than now. Check the time.
question-jump = A large change since the weight before. Weigh again.
