### Weight and output against age: labels, cautions and questions.

## Labels of figures; the value stands beside or below.

growth-age = Alter
growth-birth-weight = Geburtsgewicht
growth-last-weight = Letztes Gewicht
growth-change = Veränderung zum Geburtsgewicht
growth-gain = Zunahme am Tag
growth-gain-range = { $value } am Tag ({ $low } bis { $high })
growth-test-weighing = Aufnahme nach Stillprobe
growth-test-weighing-range = { $value } ({ $low } bis { $high })
growth-below-resolution = Weniger, als die Waage unterscheiden kann
growth-line = Linie von -2,5 SDS an Tag { $day }: { $line }
growth-median = Veröffentlichter Median bei { $hours }: { $loss }
growth-median-vaginal = Vaginal geboren, ausschließlich gestillt
growth-median-caesarean = Per Kaiserschnitt geboren, ausschließlich gestillt
growth-back = Geburtsgewicht erreicht im Alter von { $age }
growth-feeds-least = Mindestens { $count } Mahlzeiten in 24 Stunden
growth-usual-feed = Üblich für eine Mahlzeit in diesem Alter: { $low } bis { $high }. Berichtete Mittelwerte, keine Verordnung.

## $z "-0.59".

growth-z = WHO-z { $z }

## A centile: a number as "27.8", or outside what is shown as a number.

centile-who = WHO-Perzentile { $value }
centile-below = Unter der 0,4. WHO-Perzentile
centile-above = Über der 99,6. WHO-Perzentile

## Expected nappies. $wet and $dirty are counts, $from and $to days of life.

expected-days = Tage { $from } bis { $to }
expected-wet = Mindestens { $count } nasse
expected-wet-heavy = Mindestens { $count } nasse, schwere
expected-dirty = Mindestens { $count } volle
expected-urates = Rosa oder rote Verfärbung kann vorkommen

## Cautions, beside the figures they are about.

caution-uk-early-days = Britische Kurven nutzen in den ersten zwei Wochen einen Geburtsstandard; hier gilt der WHO-Standard.
caution-preterm = Vor 37 Wochen geboren: der WHO-Standard gilt für reif geborene Kinder.
caution-clothed = Das letzte Gewicht wurde bekleidet gemessen: das wahre ist niedriger.
caution-after-feed = Das letzte Gewicht wurde gleich nach einer Mahlzeit gemessen.
caution-asked = Ein Gewicht ist zu prüfen.

## Why a weight is asked about; the weight stands beside it.

question-implausible = Weit außerhalb dessen, was in diesem Alter vorkommt. Stimmt es?
question-factor-of-ten = Um das Zehnfache daneben. Eine Ziffer zu viel oder zu wenig?
question-pounds = Pfund statt Kilogramm?
question-swapped = Nach der Mahlzeit leichter als davor. Vertauscht?
question-before-birth = Vor der Geburt. Stimmt die Zeit?
question-after-now = Später als jetzt. Stimmt die Zeit?
