### Findings: what a rule says, why, and where it comes from.
### Shown as cards and in every report. A reason may take two lines.

## Numbers come as text with their unit, as "10.4 %" or "3 days"; counts and scores as plain numbers.

## Baby.

finding-baby-hard-to-wake = Schwer zu wecken oder reagiert nicht wie sonst
finding-baby-hard-to-wake-reason = Ein Kind, das sich nicht wie sonst wecken lässt, kann ernsthaft krank sein.
finding-baby-floppy = Schlaff
finding-baby-floppy-reason = Ein schlaffes Kind kann ernsthaft krank sein.
finding-baby-fit = Krampfanfall
finding-baby-fit-reason = Ein Krampfanfall bei einem jungen Kind ist immer ein Grund, sofort ärztliche Hilfe zu holen.
finding-baby-breathing = Schnelle, angestrengte oder stöhnende Atmung
finding-baby-breathing-reason = 60 Atemzüge in der Minute und mehr, Einziehungen oder Stöhnen können eine ernste Krankheit anzeigen.
finding-baby-colour = Blau, grau, marmoriert oder sehr blass
finding-baby-colour-reason = Eine veränderte Hautfarbe kann eine ernste Krankheit anzeigen.
finding-baby-green-vomit = Grünes Erbrechen
finding-baby-green-vomit-reason = Grünes Erbrechen kann einen Darmverschluss anzeigen.
finding-baby-bulging-fontanelle = Vorgewölbte Fontanelle
finding-baby-bulging-fontanelle-reason = Eine vorgewölbte Fontanelle kann eine ernste Krankheit anzeigen.
finding-baby-rash = Ausschlag, der auf Druck nicht verblasst
finding-baby-rash-reason = Ein solcher Ausschlag kann eine schwere Infektion anzeigen.
finding-baby-cord = Rötung oder Eiter am Nabel
finding-baby-cord-reason = Das kann eine Infektion des Nabels anzeigen.
finding-baby-not-feeding = Trinkt gar nicht
finding-baby-not-feeding-reason = Ein junges Kind, das nicht mehr trinkt, kann ernsthaft krank sein.
finding-baby-distension = Aufgetriebener, gespannter Bauch
finding-baby-distension-reason = Das kann einen Darmverschluss oder eine schwere Infektion anzeigen.
finding-baby-danger-other = Ein Warnzeichen, das diese Version nicht kennt
finding-baby-danger-other-reason = Eine neuere Version hat ein Warnzeichen notiert. Eintrag lesen und nach dem Kind sehen.
finding-baby-jaundice-first-day = Gelb in den ersten 24 Stunden
finding-baby-jaundice-first-day-reason = Gelbe Haut in den ersten 24 Lebensstunden muss dringend gemessen und ärztlich beurteilt werden.
finding-baby-jaundice-extensive = Gelb bis an Hände und Füße oder sehr kräftig gelb
finding-baby-jaundice-extensive-reason = Ausgedehnte gelbe Haut kann einen Wert anzeigen, der behandelt werden muss.
finding-baby-sleepy-yellow-few-feeds = Schläfrig, gelb und wenige Mahlzeiten zugleich
finding-baby-sleepy-yellow-few-feeds-reason = { $feeds } Mahlzeiten in 24 Stunden, mindestens { $least } erwartet; die drei können sich schnell gegenseitig verstärken.
finding-baby-temperature-fever = Fieber
finding-baby-temperature-fever-reason = { $temperature }; unter drei Monaten braucht es ab 38 Grad sofort ärztliche Hilfe.
finding-baby-temperature-high = Temperatur zu hoch
finding-baby-temperature-high-reason = { $temperature }, über { $limit }. Die Listen weichen voneinander ab; hier gilt die vorsichtigere.
finding-baby-temperature-low = Temperatur zu niedrig
finding-baby-temperature-low-reason = { $temperature }, unter { $limit }. Die Listen weichen voneinander ab; hier gilt die vorsichtigere.
finding-baby-stool-pale = Entfärbter Stuhl
finding-baby-stool-pale-reason = Heller, lehmfarbener Stuhl kann einen gestörten Abfluss der Galle anzeigen.
finding-baby-stool-bloody = Blut im Stuhl
finding-baby-stool-bloody-reason = Blut im Stuhl muss ärztlich beurteilt werden.
finding-baby-urine-dark-yellow = Dunkler Urin bei gelber Haut
finding-baby-urine-dark-yellow-reason = Dunkler Urin mit gelber Haut kann einen gestörten Abfluss der Galle anzeigen.
finding-baby-urine-dark = Dunkler Urin
finding-baby-urine-dark-reason = Der Urin eines Neugeborenen ist meist farblos. Auf gelbe Haut und blassen Stuhl achten, und ob das Kind genug trinkt.
finding-baby-jaundice = Gelbe Haut
finding-baby-jaundice-reason = Gesehen im Alter von { $age }. Messen, nicht nach Augenmaß beurteilen.
finding-baby-jaundice-prolonged = Länger gelb als üblich
finding-baby-jaundice-prolonged-reason = Noch gesehen im Alter von { $age }; nach mehr als { $limit } abklären. Auf die Farbe von Stuhl und Urin achten.
finding-baby-temperature-cool = Etwas kühl
finding-baby-temperature-cool-reason = { $temperature }, unter 36,5 Grad. Im Hautkontakt wärmen und nachmessen.
finding-baby-clicking = Schnalzen an der Brust
finding-baby-clicking-reason = Schnalzen heißt oft, dass das Vakuum abreißt: flach angelegt, starker Milchfluss oder eingeschränkte Zunge.

## Mother.

finding-mother-bleeding = Mutter: starke Blutung oder Schwäche
finding-mother-bleeding-reason = Plötzliche oder zunehmende Blutung, auch mit Schwäche, kann eine bedrohliche Nachblutung sein.
finding-mother-infection = Mutter: Fieber, Schüttelfrost, Bauchschmerz oder übel riechender Wochenfluss
finding-mother-infection-reason = Das kann eine schwere Infektion sein.
finding-mother-headache = Mutter: Kopfschmerz mit Sehstörung, Übelkeit oder Erbrechen
finding-mother-headache-reason = Das kann gefährlicher Bluthochdruck nach der Geburt sein.
finding-mother-calf = Mutter: Schmerz oder Schwellung in einer Wade
finding-mother-calf-reason = Das kann eine Thrombose sein.
finding-mother-chest = Mutter: Atemnot oder Brustschmerz
finding-mother-chest-reason = Das kann eine Lungenembolie oder eine Störung des Herzens sein.
finding-mother-sepsis = Mutter: verwirrt, marmoriert oder ohne Urin
finding-mother-sepsis-reason = Das kann eine Sepsis sein.
finding-mother-breast = Mutter: sich ausbreitende heiße Rötung der Brust oder ein Knoten, der ein Abszess sein kann
finding-mother-breast-reason = Das braucht ärztliche Behandlung.
finding-mother-mind = Mutter: Gedanken, sich oder dem Kind etwas anzutun, oder wahnhafte Vorstellungen
finding-mother-mind-reason = Nicht allein lassen; sie braucht sofort Hilfe.
finding-mother-danger-other = Mutter: ein Warnzeichen, das diese Version nicht kennt
finding-mother-danger-other-reason = Eine neuere Version hat ein Warnzeichen notiert. Eintrag lesen und nach der Mutter sehen.

## Weight.

finding-weight-below-line = Gewicht unter der Linie von -2,5 SDS
finding-weight-below-line-reason = { $loss } des Geburtsgewichts verloren; bei { $line } liegt die Linie (Alter: { $day }). Nur sehr wenige gesunde gestillte Kinder verlieren mehr.
finding-weight-loss-second-week = In der zweiten Woche noch mehr als ein Zehntel verloren
finding-weight-loss-second-week-reason = { $loss } des Geburtsgewichts verloren im Alter von { $age }; mehr als { $limit } in der zweiten Woche ist ein Grund zur Überweisung.
finding-weight-loss-medical = Sehr großer Gewichtsverlust
finding-weight-loss-medical-reason = { $loss } des Geburtsgewichts verloren im Alter von { $age }, mehr als { $limit }. So viel verlieren nur wenige Kinder.
finding-weight-loss-with-signs = Großer Gewichtsverlust mit einem weiteren Zeichen
finding-weight-loss-with-signs-reason = { $loss } des Geburtsgewichts verloren im Alter von { $age }, mehr als { $limit }, dazu ein weiteres Zeichen, dass das Kind krank oder ausgetrocknet sein kann.
finding-weight-not-back-21 = Geburtsgewicht mit drei Wochen nicht erreicht
finding-weight-not-back-21-reason = { $short } unter dem Geburtsgewicht im Alter von { $age }. Die meisten Kinder haben es mit drei Wochen wieder.
finding-weight-loss-over-ten = Großer Gewichtsverlust
finding-weight-loss-over-ten-reason = { $loss } des Geburtsgewichts verloren im Alter von { $age }, mehr als { $limit }. Auf Austrocknung und Krankheit achten, Trinkverhalten erfragen, eine Mahlzeit beobachten.
finding-weight-not-back-14 = Geburtsgewicht mit zwei Wochen nicht erreicht
finding-weight-not-back-14-reason = { $short } unter dem Geburtsgewicht im Alter von { $age }. Etwa jedes siebte bis vierte Kind hat es dann noch nicht.
finding-weight-falling = Nimmt nach Tag fünf weiter ab
finding-weight-falling-reason = { $fall } verloren in { $hours }. Der erste Verlust endet meist um Tag drei bis vier.
finding-weight-below-second-centile = Unter der zweiten Perzentile
finding-weight-below-second-centile-reason = { $z } im Alter von { $age }, nach dem WHO-Standard.
finding-weight-centile-fall = Perzentilenknick
finding-weight-centile-fall-reason = { $fall } tiefer im WHO-Standard als bei der Geburt, im Alter von { $age }; ab { $limit } beurteilen lassen.
finding-weight-loss-born-early = Zu großer Verlust für ein früh geborenes Kind
finding-weight-loss-born-early-reason = { $loss } des Geburtsgewichts verloren im Alter von { $age }; bei Geburt mit 34 bis 36 Wochen ist mehr als { $limit } zu beurteilen.
finding-weight-asked = Ein Gewicht prüfen
finding-weight-asked-reason = { $count } zu prüfen: passt nicht zu den anderen oder zum Alter. Nichts wurde verworfen.
finding-weight-swapped = Gewichte vor und nach der Mahlzeit vertauscht
finding-weight-swapped-reason = { $count } nach einer Mahlzeit leichter als davor, mehr als beim Wiegen vorkommt. Beide prüfen und noch einmal wiegen.
finding-weight-loss-watch = Gewichtsverlust im Auge behalten
finding-weight-loss-watch-reason = { $loss } des Geburtsgewichts verloren im Alter von { $age }, mehr als { $limit }.
finding-weight-gain-slow = Langsame Gewichtszunahme
finding-weight-gain-slow-reason = { $gain } am Tag über { $hours }; üblich sind in diesen Wochen mindestens { $least } am Tag.
finding-weight-test-low = Wenig Milch in der Stillprobe
finding-weight-test-low-reason = { $intake }, höchstens { $end } nach dem, was die Waage zulässt; { $least } oder mehr sind üblich. Eine Mahlzeit sagt wenig: auf den ganzen Tag sehen.
finding-weight-back = Geburtsgewicht wieder erreicht
finding-weight-back-reason = Zuerst gesehen im Alter von { $age }.
finding-weight-gaining = Nimmt gut zu
finding-weight-gaining-reason = { $gain } am Tag über { $hours }; üblich sind mindestens { $least } am Tag.
finding-weight-test-enough = Genug Milch in der Stillprobe
finding-weight-test-enough-reason = { $intake }, mindestens { $end } nach dem, was die Waage zulässt; { $least } oder mehr sind üblich.

## Output.

finding-output-no-wet = Keine nasse Windel
finding-output-no-wet-reason = Keine seit { $hours } oder länger im Alter von { $age }. Das Kind kann ausgetrocknet sein.
finding-output-no-meconium-long = Kein Stuhl seit der Geburt
finding-output-no-meconium-long-reason = Keiner im Alter von { $age }. Keiner bis 48 Stunden kann einen Darmverschluss bedeuten.
finding-output-no-meconium = Noch kein erster Stuhl
finding-output-no-meconium-reason = Keiner im Alter von { $age }. Der erste Stuhl kommt meist in den ersten 24 Stunden.
finding-output-wet-gap = Letzte nasse Windel lange her
finding-output-wet-gap-reason = { $hours }; ab { $limit } ist zu handeln.
finding-output-few-wet = Wenige nasse Windeln
finding-output-few-wet-reason = { $count } in 24 Stunden; mindestens { $least } erwartet am { $day }. Lebenstag.
finding-output-no-dirty = Keine Stuhlwindel
finding-output-no-dirty-reason = Keine in 24 Stunden; mindestens { $least } erwartet am { $day }. Lebenstag. Gab es seit der Geburt keine, noch heute anrufen.
finding-output-few-dirty = Wenige Stuhlwindeln
finding-output-few-dirty-reason = { $count } in 24 Stunden; mindestens { $least } erwartet am { $day }. Lebenstag. Die Hälfte der gestillten Kinder hat an Tag vier vier oder mehr.
finding-output-black-late = Stuhl noch schwarz
finding-output-black-late-reason = Am { $day }. Lebenstag. Dann ist er meist gelb; so spät noch schwarzer Stuhl kommt bei wenig Milch vor.
finding-output-urates = Rosa oder ziegelrote Verfärbung
finding-output-urates-reason = Gesehen im Alter von { $age }. Nach den ersten zwei Tagen kann das zu wenig Milch bedeuten.
finding-output-colour-behind = Stuhlfarbe hinter dem Tag zurück
finding-output-colour-behind-reason = Am { $day }. Lebenstag ist sie meist schon weiter.
finding-output-as-expected = Windeln wie erwartet
finding-output-as-expected-reason = { $wet } nasse Windeln und { $dirty } Stuhlwindeln in 24 Stunden am { $day }. Lebenstag, und die Farbe passt.

## Feeds.

finding-feeds-none = Keine Mahlzeit in 24 Stunden
finding-feeds-none-reason = Keine Mahlzeit an der Brust und keine Milch auf anderem Weg, im Alter von { $age }.
finding-feeds-none-first-day = Noch keine Mahlzeit
finding-feeds-none-first-day-reason = Keine Mahlzeit an der Brust und keine Milch auf anderem Weg, im Alter von { $age }. Eine erste ist bis { $by } üblich; die Regeln des Hauses entscheiden.
finding-feeds-few = Wenige Mahlzeiten
finding-feeds-few-reason = { $feeds } in 24 Stunden; mindestens { $least } sind üblich.
finding-feeds-few-first-day = Wenige Mahlzeiten am ersten Tag
finding-feeds-few-first-day-reason = { $feeds } in 24 Stunden, überwiegend am ersten Lebenstag; dann sind mindestens { $least } üblich, im Mittel etwa vier. Die Regeln des Hauses entscheiden.
finding-feeds-sleepy = Muss für die meisten Mahlzeiten geweckt werden
finding-feeds-sleepy-reason = Ein Kind, das nicht von selbst wach wird, trinkt vielleicht zu wenig.
finding-feeds-baby-hungry-after = Nach der Mahlzeit noch hungrig
finding-feeds-baby-hungry-after-reason = Das Kind suchte am Ende noch oder war hungrig.
finding-feeds-baby-sleepy-after = Früh eingeschlafen
finding-feeds-baby-sleepy-after-reason = Das Kind schlief früh ein und war schwer zu wecken.
finding-feeds-baby-unsettled-after = Nach der Mahlzeit unruhig
finding-feeds-baby-unsettled-after-reason = Das Kind weinte am Ende oder überstreckte sich. Übliche Ursachen: schneller Milchfluss, Luft oder Hunger.
finding-feeds-supplement = Pre-Nahrung oder Spenderinnenmilch gegeben
finding-feeds-supplement-reason = { $given } in 24 Stunden. Fragen, warum und wie; Abpumpen erhält inzwischen die Milchbildung.
finding-feeds-given-above-usual = Mehr Milch auf anderem Weg als üblich
finding-feeds-given-above-usual-reason = { $given } in 24 Stunden; acht übliche Mahlzeiten sind in diesem Alter höchstens { $usual }. Für die Brust bleibt so vielleicht wenig Hunger.
finding-feeds-very-often = Sehr viele Mahlzeiten
finding-feeds-very-often-reason = { $feeds } in 24 Stunden, mehr als { $most }. Bei wenig Zunahme oder wenigen Windeln kommt vielleicht nicht genug Milch an.
finding-feeds-long = Sehr lange Mahlzeit
finding-feeds-long-reason = { $lasted }, länger als { $most }. Bei meist schnellen oder flatternden Saugzügen kommt vielleicht wenig Milch an.
finding-feeds-short = Sehr kurze Mahlzeit
finding-feeds-short-reason = { $lasted } insgesamt, kürzer als { $least }, und vom Kind beendet.
finding-feeds-often = Trinkt oft genug
finding-feeds-often-reason = { $feeds } in 24 Stunden; mindestens { $least } sind üblich.
finding-feeds-baby-content = Nach der Mahlzeit zufrieden
finding-feeds-baby-content-reason = Das Kind war am Ende entspannt.

## Position and attachment.

finding-sign-not-close = Nicht nah genug
finding-sign-not-close-reason = Mit Abstand muss das Kind sich strecken und rutscht auf die Mamille. Üblich: das ganze Kind heranholen.
finding-sign-head-not-free = Kopf nicht frei
finding-sign-head-not-free-reason = Eine Hand oder ein Arm hinter dem Kopf hindert den Mund am weiten Öffnen. Üblich: Nacken und Schultern halten.
finding-sign-not-in-line = Ohr, Schulter und Hüfte nicht in einer Linie
finding-sign-not-in-line-reason = Mit gedrehtem Kopf ist Schlucken schwer. Üblich: den Körper zur Mutter drehen.
finding-sign-nose-not-to-nipple = Nase nicht auf Höhe der Mamille
finding-sign-nose-not-to-nipple-reason = Von weiter oben oder unten erreicht die Mamille den hinteren Gaumen nicht. Üblich: das Kind schieben, bis die Nase an der Mamille ist.
finding-sign-cannot-be-kept-up = Nicht lange durchzuhalten
finding-sign-cannot-be-kept-up-reason = Eine Haltung, die ermüdet, wird früh aufgegeben. Üblich: Rücken, Arme und Füße stützen oder eine andere Haltung.
finding-sign-mouth-not-wide = Mund nicht weit offen
finding-sign-mouth-not-wide-reason = Ein enger Mund fasst nur die Mamille. Üblich: Vakuum lösen, auf den weiten Mund warten, neu anlegen.
finding-sign-chin-not-in = Kinn nicht an der Brust
finding-sign-chin-not-in-reason = Das Kind ist unten zu weit weg. Üblich: Po heran, Kinn zuerst.
finding-sign-nose-not-clear = Nase nicht frei
finding-sign-nose-not-clear-reason = Der Winkel stimmt nicht. Üblich: Po näher, Kopf frei zum Zurücklegen.
finding-sign-cheeks-not-full = Wangen eingezogen
finding-sign-cheeks-not-full-reason = Grübchen in den Wangen zeigen ein schlechtes Vakuum. Üblich: neu anlegen.
finding-sign-areola-not-above = Über der Oberlippe nicht mehr Areola als unten
finding-sign-areola-not-above-reason = Die Mamille liegt mitten im Mund statt am Gaumen. Üblich: Nase an die Mamille, Kinn tiefer.
finding-sign-lower-lip-not-out = Unterlippe nicht nach außen gestülpt
finding-sign-lower-lip-not-out-reason = Eine eingezogene Lippe reibt. Üblich: neu anlegen.
finding-signs-position-good = Gute Haltung
finding-signs-position-good-reason = Alle Zeichen der Haltung wurden gesehen.
finding-signs-attachment-good = Gut angelegt
finding-signs-attachment-good-reason = Alle Zeichen des Anlegens wurden gesehen.

## Rhythm.

finding-rhythm-no-first-flow = Kein Milchfluss gesehen
finding-rhythm-no-first-flow-reason = Keiner in { $watched } an der Brust; gesucht wird er innerhalb von { $limit }.
finding-rhythm-only-flutter = Nur flatterndes Saugen
finding-rhythm-only-flutter-reason = { $flutter } von { $sucking } Saugen waren flatternd, und kein Milchfluss war zu sehen.
finding-rhythm-flow-short = Kurzer Milchfluss
finding-rhythm-flow-short-reason = { $flow } insgesamt, weniger als { $limit }.
finding-rhythm-no-swallow = Kein Schlucken bemerkt
finding-rhythm-no-swallow-reason = Keines in { $sucking } Saugen, im Alter von { $age }. Ab Tag 3 oder 4 ist Schlucken meist häufig zu hören.
finding-rhythm-flow-seen = Milchfluss mit Schlucken
finding-rhythm-flow-seen-reason = Er begann nach { $first } und dauerte { $flow }, mit { $swallows } gezählten Schlucken im Besuch.

## Pain.

finding-pain-severe = Starker Schmerz
finding-pain-severe-reason = { $score } nach den ersten Sekunden; ab { $limit } gilt er als stark.
finding-pain-severe-latching = Starker Schmerz beim Anlegen
finding-pain-severe-latching-reason = { $score } in den ersten Sekunden; ab { $limit } gilt er als stark. So oft beim Anlegen: { $count }. Das Kind kam ab, ehe er nachlassen konnte, oder er kam beim nächsten Anlegen wieder.
finding-pain-through-feed = Schmerz während der ganzen Mahlzeit
finding-pain-through-feed-reason = Bis { $score }, über { $seconds }. Schmerz, der bleibt, heißt: ändern oder Hilfe holen.
finding-pain-at-end = Schmerz am Ende der Mahlzeit
finding-pain-at-end-reason = { $score } bei der letzten Angabe; ab { $limit } ist zu handeln.
finding-pain-beyond-start = Schmerz über die ersten Sekunden hinaus
finding-pain-beyond-start-reason = { $score } später als etwa 20 Sekunden nach dem Anlegen; ab { $limit } zählt er.
finding-pain-after = Schmerz nach der Mahlzeit
finding-pain-after-reason = { $score } nach dem Ende; ab { $limit } zählt er. Übliche Ursachen: Druck, Verletzung, Kälte, verengte Gefäße.
finding-pain-settled = Schmerz hat nachgelassen
finding-pain-settled-reason = Von { $before } auf { $after }.
finding-pain-none = Kein nennenswerter Schmerz
finding-pain-none-reason = Sie wurde während der Mahlzeit gefragt.

## Nipple and breast.

finding-nipple-damaged = Mamille verletzt
finding-nipple-damaged-reason = Rissig, mit Blase oder blutend. Meist liegt es daran, wie das Kind angelegt ist.
finding-nipple-misshapen = Mamille nach der Mahlzeit abgeflacht oder mit Kante
finding-nipple-misshapen-reason = Sie wurde gedrückt: oft flach angelegt.
finding-nipple-blanched = Mamille nach der Mahlzeit weiß
finding-nipple-blanched-reason = Sie wurde gedrückt, oder ihre Gefäße haben sich verengt (Vasospasmus).
finding-breast-red = Rote oder heiße Stelle an der Brust
finding-breast-red-reason = Sie kann entzündet sein. Nach einem Tag guten Trinkens nicht besser: ärztlich beurteilen lassen.
finding-breast-lump = Knoten in der Brust
finding-breast-lump-reason = Es kann ein Milchstau sein. Bleibt er: ärztlich beurteilen lassen.
finding-breast-engorged = Brust prall und hart
finding-breast-engorged-reason = Eine pralle Areola ist schwer zu fassen. Üblich: vorher etwas Milch ausstreichen, bis sie weich ist.
finding-nipple-sore = Mamille wund oder rot
finding-nipple-sore-reason = Meist liegt es daran, wie das Kind angelegt ist.
finding-nipple-flat = Mamille flach oder eingezogen
finding-nipple-flat-reason = Manche Kinder brauchen dann mehr Hilfe beim Anlegen.
finding-breast-not-softer = Brust nach der Mahlzeit nicht weicher
finding-breast-not-softer-reason = Vielleicht ist wenig Milch geflossen.
finding-breast-not-filling = Brüste füllen sich noch nicht
finding-breast-not-filling-reason = Beide vor der Mahlzeit weich im Alter von { $age }. Ab 72 Stunden füllen sich die meisten; die Milch kommt vielleicht spät.
finding-nipple-rounded = Mamille nach der Mahlzeit rund
finding-nipple-rounded-reason = Sie hat Form und Farbe behalten.
finding-breast-softer = Brust nach der Mahlzeit weicher
finding-breast-softer-reason = Milch ist geflossen.

## What is known beforehand.

finding-risk-born-early = Früh geboren
finding-risk-born-early-reason = Geboren mit { $weeks } vollen Wochen. Solche Kinder ermüden früh, wachen seltener auf und trinken schlechter, als es scheint.
finding-risk-twins = Zwillinge oder mehr
finding-risk-twins-reason = { $babies } Kinder. Jedes braucht eine eigene beobachtete Mahlzeit, und Milch für alle.
finding-risk-low-sugar = Risiko für Unterzuckerung
finding-risk-low-sugar-reason = Klein, früh geboren, oder die Mutter hat Diabetes; { $age } alt. Nach der Vorgabe der Station handeln.
finding-risk-jaundice = Risiko für Gelbsucht
finding-risk-jaundice-reason = Vor 38 Wochen geboren, oder eine Gelbsucht wurde in der Familie behandelt; { $age } alt. Innerhalb von 48 Stunden die Haut bei gutem Licht ansehen.
finding-risk-milk-later = Milch kommt vielleicht später
finding-risk-milk-later-reason = { $notes } vermerkt: Blutverlust, Brustoperation, Trennung oder Diabetes. Frühes und häufiges Anlegen oder Abpumpen hilft.
finding-risk-tongue = Zunge wirkt eingeschränkt, und die Mahlzeit zeigt es
finding-risk-tongue-reason = Auch Schnalzen, eine gedrückte Mamille oder Schmerz wurde gefunden. Eine darin geübte Person sollte es ansehen.

## Sources, as they stand below a finding. Titles of publications stay as they are.

source-abm-3 = Academy of Breastfeeding Medicine, Clinical Protocol 3, 2017
source-abm-1 = Academy of Breastfeeding Medicine, Clinical Protocol 1, 2021
source-abm-10 = Academy of Breastfeeding Medicine, Clinical Protocol 10, 2016
source-abm-36 = Academy of Breastfeeding Medicine, Clinical Protocol 36, 2022
source-gardner-2015 = Gardner et al. 2015, BMC Pregnancy and Childbirth 15:156
source-hartmann-2011 = Hartmann et al. 2011, FASEB Journal 25 (supplement), 589.1
source-kent-2015 = Kent et al. 2015, Int J Environ Res Public Health 12:12247
source-kent-2006 = Kent et al. 2006, Pediatrics 117:e387
source-nhs-checklist = NHS-Merkblätter für Eltern: bekommt mein Kind genug Milch
source-macdonald-2003 = Macdonald et al. 2003, Arch Dis Child Fetal Neonatal Ed 88:F472; Davanzo et al. 2013, J Hum Lact 29:374
source-nice-cg98 = NICE CG98, Jaundice in newborn babies, 2010
source-nice-cg192 = NICE CG192, Antenatal and postnatal mental health, 2014
source-nice-ng51 = NICE NG51, Sepsis, 2016
source-nice-ng75 = NICE NG75, Faltering growth, 2017
source-nice-ng143 = NICE NG143, Fever in under 5s, 2019
source-nice-ng194 = NICE NG194, Postnatal care, 2021
source-paul-2016 = Paul et al. 2016, Pediatrics 138:e20162625
source-van-dommelen-2007 = van Dommelen et al. 2007, Arch Dis Child 92:490
source-who-counselling = WHO and UNICEF, Breastfeeding counselling: a training course, 1993
source-who-imci = WHO, Integrated Management of Childhood Illness, 2014
source-who-newborn = WHO, Managing newborn problems, 2003
source-who-thermal = WHO, Thermal protection of the newborn, 1997
source-who-2006 = WHO Child Growth Standards, 2006
source-flaherman-2015 = Flaherman et al. 2015, Pediatrics 135:e16
source-savenije-2006 = Savenije und Brand 2006, Arch Dis Child Fetal Neonatal Ed 91:F330
source-yicss-2008 = Young Infants Clinical Signs Study Group 2008, Lancet 371:135
source-yamauchi-1990 = Yamauchi und Yamanouchi 1990, Pediatrics 86:171
source-uk-checklist = UNICEF UK Baby Friendly Initiative, Beurteilungsbogen Stillen
source-uk-urgent = Vereinigtes Königreich, Warnzeichen bei Kindern unter drei Monaten, Rat für Eltern
source-common-practice = Gängige Praxis
source-newer-list = Eine Liste einer neueren Version

## What was missing, in a list after "could not be judged".

missing-birth = Die Geburtszeit, vor jetzt
missing-birth-weight = Das Geburtsgewicht
missing-weight = Ein Gewicht nach der Geburt
missing-unclothed-weight = Ein Gewicht ohne Kleidung
missing-recent-weight = Ein frisches Gewicht
missing-checked-weight = Ein geprüftes Gewicht
missing-second-weight = Ein zweites Gewicht, 24 Stunden davor
missing-sex = Das Geschlecht des Kindes
missing-gestation = Die Schwangerschaftsdauer bei der Geburt
missing-supplement = Wie viel Pre-Nahrung oder Spenderinnenmilch gegeben wurde
missing-expressed = Wie viel abgepumpte Milch gegeben wurde
missing-pain-after = Schmerz nach jeder Mahlzeit gefragt
missing-way-of-birth = Die Art der Geburt
missing-early-reference = Eine Wachstumsreferenz für Frühgeborene
missing-whole-day = Ein ganzer Tag seit der Geburt, über den zu zählen ist
missing-meconium = Ob je Stuhl abgesetzt wurde
missing-dark-urine = Ob der Urin dunkel ist
missing-feeds = Mahlzeiten in 24 Stunden
missing-wet = Nasse Windeln in 24 Stunden
missing-wet-gap = Stunden seit der letzten nassen Windel
missing-dirty = Stuhlwindeln in 24 Stunden
missing-stool-colour = Die Stuhlfarbe
missing-urates = Ob rosa oder rote Verfärbung zu sehen war
missing-sleepy = Ob das Kind geweckt werden muss
missing-jaundice = Ob die Haut gelb aussieht
missing-temperature = Die Temperatur
missing-baby-danger = Die Warnzeichen des Kindes
missing-mother-danger = Die Warnzeichen der Mutter
missing-sign = Eine Angabe zu diesem Zeichen
missing-sign-clear = Eine klare Angabe zu diesem Zeichen
missing-feed = Eine beobachtete Mahlzeit
missing-watched-time = Mehr beobachtete Zeit an der Brust
missing-clean-rhythm = Eine ohne lange Lücken beobachtete Mahlzeit
missing-feed-end = Das Ende der Mahlzeit
missing-pain = Schmerzangabe nach den ersten Sekunden
missing-nipple-before = Beide Mamillen vor der Mahlzeit
missing-breast-before = Beide Brüste vor der Mahlzeit
missing-nipple-after = Die Mamille nach jeder Mahlzeit
missing-breast-after = Die Brust nach der Mahlzeit
missing-baby-state = Der Zustand des Kindes nach der Mahlzeit

## Levels, gravest first.

level-medical-review-now = Sofort ärztlich beurteilen
level-act-today = Heute handeln
level-keep-watching = Weiter beobachten
level-going-well = Läuft gut

## Whom to call, where the ward's policy names nobody.

call-baby-doctor = Kinderärztin oder Kinderarzt
call-mother-doctor = Ärztin oder Arzt für die Mutter
call-midwife-in-charge = Leitende Hebamme
call-feeding-team = Stillteam
call-nobody = Niemand weiter
# { $what } wen man ruft, oder dass man ruft; { $number } die eigenen Worte der Station, wie "Funk 101".
call-with-number = { $what } ({ $number })

## Beside every list of findings.

