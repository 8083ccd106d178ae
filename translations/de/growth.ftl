### Weight and output against age: labels, cautions and questions.

## Labels of figures; the value stands beside or below.


## $z "-0.59".


## A centile: a number as "27.8", or outside what is shown as a number.


## Expected nappies. $wet and $dirty are counts, $from and $to days of life.


## Cautions, beside the figures they are about.

caution-uk-early-days = Britische Kurven nutzen in den ersten zwei Wochen einen Geburtsstandard; hier gilt der WHO-Standard.
caution-preterm = Vor 37 Wochen geboren: der WHO-Standard gilt für reif geborene Kinder.
caution-clothed = Das letzte Gewicht wurde bekleidet gemessen: das wahre ist niedriger.
caution-after-feed = Das letzte Gewicht wurde gleich nach einer Mahlzeit gemessen.
caution-asked = Ein Gewicht ist zu prüfen.

## Why a weight is asked about; the weight stands beside it.

question-implausible = Unwahrscheinlich für dieses Alter. Gewicht, Geburtszeit und Geschlecht prüfen.
question-factor-of-ten = Etwa das Zehnfache oder ein Zehntel des Gewichts davor. Ziffern prüfen.
question-pounds = Als wären Pfund und Kilogramm verwechselt. Einheit prüfen.
question-swapped = Nach der Mahlzeit leichter als davor. Prüfen, ob die beiden vertauscht sind.
question-before-birth = Vor der Geburt gemessen. Beide Zeiten prüfen.
question-after-now = Später als jetzt gemessen. Zeit prüfen.
question-jump = Große Änderung seit dem Gewicht davor. Noch einmal wiegen.
