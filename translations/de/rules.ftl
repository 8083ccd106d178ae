### The printed catalogue of the rules, for review by a ward's clinical lead.
### One line each; may be long.

## Labels. $date as "2026-11-25".

rules-title = Feedside: die Regeln der Befunde
rules-count = { $rules } Regeln in { $families } Gruppen, Fassung { $version } vom { $date }.
rules-policy = Grenzen nach den Stationsregeln { $name }, Fassung { $version }, { $date }, von { $author }.
rules-caution = Zur Durchsicht durch die klinische Leitung der Station. Die Regeln beschreiben und stellen keine Diagnose; hausinterne Vorgaben und die Fachkraft entscheiden. Keine Regel gilt bei fehlenden Angaben, und keine der Stufe „Sofort ärztlich beurteilen“ kann abgeschaltet werden.
rules-level = Stufe
rules-when = Gilt, wenn
rules-fixed = Keine Grenze, die eine Station setzen kann
rules-threshold = Grenze
rules-threshold-value = { $name }: { $value }; veröffentlichte Spanne { $low } bis { $high }
rules-source = Quelle
rules-tried = Üblicherweise versucht
rules-agreed = Üblicherweise vereinbart
rules-call = Rufen
rules-changed = Letzte Änderung
rules-changed-value = { $version }, { $date }
rules-thresholds = Grenzen, die eine Station setzen kann

## Families of rules, as headings.

family-baby = Kind
family-mother = Mutter
family-weight = Gewicht
family-output = Windeln
family-feeds = Mahlzeiten
family-signs = Haltung und Anlegen
family-rhythm = Rhythmus
family-pain = Schmerz
family-nipple = Mamille und Brust
family-risk = Vorher bekannt

## Thresholds that a ward may set, as they stand before a value.

limit-weight-loss-watch-percent = Verlust, über dem beobachtet wird
limit-weight-loss-act-percent = Verlust, über dem heute beurteilt wird
limit-weight-loss-medical-percent = Verlust, über dem sofort ärztlich beurteilt wird
limit-weight-fresh-hours = Wie lange ein Gewicht gilt, erste 14 Tage
limit-gain-least-g-per-day = Mindestzunahme am Tag
limit-feeds-least = Mindestzahl der Mahlzeiten in 24 Stunden
limit-wet-gap-act-hours = Zeit ohne nasse Windel, ab der gehandelt wird
limit-wet-gap-medical-hours = Zeit ohne nasse Windel, ab der sofort ärztlich beurteilt wird
limit-first-flow-within-s = Zeit an der Brust, in der Milchfluss erwartet wird
limit-flow-least-s = Mindestdauer des Milchflusses
limit-pain-from-score = Wert, ab dem Schmerz zählt
limit-pain-end-score = Wert, ab dem am Ende gehandelt wird
limit-temperature-high-celsius = Temperatur, über der sofort ärztlich beurteilt wird
limit-temperature-low-celsius = Temperatur, unter der sofort ärztlich beurteilt wird

## When each rule holds, after "Holds when".

rule-danger = Unter den erfragten und gesuchten Warnzeichen vermerkt.
rule-sign-not-seen = Das Zeichen wurde gesucht und zuletzt nicht gesehen.
rule-baby-jaundice-first-day = Gelbe Haut ist vor 24 Stunden nach der Geburt zu sehen oder ist als damals gesehen vermerkt.
rule-baby-jaundice-extensive = Gelb bis zu Händen und Füßen oder sehr tief, in jedem Alter.
rule-baby-sleepy-yellow-few-feeds = Ab 24 Stunden: muss geweckt werden, gelbe Haut und weniger Mahlzeiten als der Mindestwert der Station, alle drei.
rule-baby-temperature-fever = 38,0 Grad oder mehr.
rule-baby-temperature-high = Über der oberen Temperatur der Station und unter 38,0 Grad.
rule-baby-temperature-low = Unter der unteren Temperatur der Station.
rule-baby-stool-pale = Heller, lehmfarbener Stuhl wurde berichtet oder gesehen.
rule-baby-urine-dark-yellow = Dunkler Urin wurde berichtet, und gelbe Haut.
rule-baby-urine-dark = Dunkler Urin wurde berichtet, und keine gelbe Haut.
rule-baby-stool-bloody = Stuhl mit Blut wurde berichtet oder gesehen.
rule-baby-jaundice = Gelbes Gesicht oder gelber Körper ab 24 Stunden, bis 14 Tage (21 bei Geburt vor 37 Wochen).
rule-baby-jaundice-prolonged = Gelbes Gesicht oder gelber Körper nach mehr als 14 Tagen (21 bei Geburt vor 37 Wochen).
rule-baby-temperature-cool = Unter 36,5 Grad und nicht unter der unteren Temperatur der Station.
rule-weight-below-line = Mehr verloren als die Linie von -2,5 SDS am Tag des Wiegens, Tage 2 bis 11.
rule-weight-loss-second-week = Mehr als 10,0 % verloren bei einem Gewicht der Tage 7 bis 13.
rule-weight-loss-medical = Mehr verloren als die Grenze der Station für die ärztliche Beurteilung.
rule-weight-loss-with-signs = Mehr verloren als die Handlungsgrenze der Station, dazu ein Warnzeichen, Schläfrigkeit, gelbe Haut, Temperatur außerhalb der Grenzen, wenige nasse Windeln oder rosa oder rote Verfärbung ab 48 Stunden.
rule-weight-not-back-21 = Unter dem Geburtsgewicht bei einem Gewicht ab 21 Tagen.
rule-weight-loss-over-ten = Mehr verloren als die Handlungsgrenze der Station.
rule-weight-not-back-14 = Unter dem Geburtsgewicht bei einem Gewicht der Tage 14 bis 20.
rule-weight-falling = Ab 120 Stunden: leichter als bei einem früheren Wiegen ab 96 Stunden, mehr als Waage und Handhabung erklären.
rule-weight-below-second-centile = Ab 14 Tagen, reif geboren: unter -2 Standardabweichungen des WHO-Standards.
rule-weight-centile-fall = Ab 28 Tagen, reif geboren: seit der Geburt um mindestens einen Perzentilabstand gefallen (geboren unter der 9. Perzentile), zwei (9. bis 91.) oder drei (über der 91.); ein Abstand ist zwei Drittel einer Standardabweichung.
rule-weight-loss-born-early = Geboren mit 34 bis 36 Wochen, in den ersten 14 Tagen: mehr als 3 % je angefangenem Tag oder mehr als 7 % verloren.
rule-weight-asked = Ein Gewicht ist unwahrscheinlich, um etwa das Zehnfache daneben, wie in Pfund, weit vom vorigen entfernt, vor der Geburt oder später als jetzt.
rule-weight-swapped = Mehr als 30 g leichter nach einer Mahlzeit als davor.
rule-weight-loss-watch = Mehr verloren als die Beobachtungsgrenze der Station und nicht mehr als ihre Handlungsgrenze.
rule-weight-gain-slow = Ab 120 Stunden bis 91 Tage: nimmt am Tag weniger zu als der Mindestwert der Station, seit einer Wägung ab 96 Stunden.
rule-weight-test-low = Das obere Ende einer Stillprobe der letzten 24 Stunden liegt unter der kleinsten üblichen Mahlzeit des Alters (30 ml nach den Tabellen, reif geboren).
rule-weight-back = Das Geburtsgewicht wurde nach dem ersten Tag wieder erreicht, und das letzte Gewicht liegt nicht darunter.
rule-weight-gaining = Ab 120 Stunden bis 91 Tage: nimmt am Tag mindestens den Mindestwert der Station zu.
rule-weight-test-enough = Das untere Ende einer Stillprobe der letzten 24 Stunden erreicht die kleinste übliche Mahlzeit des Alters.
rule-output-no-wet = Ab 24 Stunden: keine nasse Windel in 24 Stunden, oder ab 48 Stunden keine so lange wie die Grenze der Station; keine im Besuch gesehen.
rule-output-wet-gap = Ab 96 Stunden: keine nasse Windel so lange wie die Handlungsgrenze der Station und kürzer als ihre Grenze für die ärztliche Beurteilung.
rule-output-few-wet = Nasse Windeln in 24 Stunden, aber weniger als der Mindestwert der Tabelle für den Tag.
rule-output-no-dirty = Ab 24 Stunden: keine Stuhlwindel in 24 Stunden.
rule-output-few-dirty = Stuhlwindeln in 24 Stunden, aber weniger als der Mindestwert der Tabelle für den Tag.
rule-output-no-meconium-long = Ab 48 Stunden: laut Bericht kein Stuhl seit der Geburt; keiner im Besuch gesehen.
rule-output-no-meconium = Ab 24 bis 48 Stunden: laut Bericht kein Stuhl seit der Geburt, oder mit 24 Stunden keiner in 24 Stunden gezählt; keiner im Besuch gesehen.
rule-output-black-late = Der letzte Stuhl ist an Tag 5 oder später schwarz.
rule-output-urates = Rosa oder rote Verfärbung ab 48 Stunden.
rule-output-colour-behind = Der letzte Stuhl ist schwarz oder grün an einem Tag, für den die Tabelle eine spätere Farbe erwartet.
rule-output-as-expected = Nasse Windeln, Stuhlwindeln und die Farbe wie in der Tabelle, keine Verfärbung zur Unzeit und keine lange Lücke.
rule-feeds-none = Ab 24 Stunden: keine Mahlzeit in 24 Stunden und keine Milch auf anderem Weg.
rule-feeds-few = Ab 36 Stunden: weniger Mahlzeiten in 24 Stunden als der Mindestwert der Station.
rule-feeds-none-first-day = Ab 6 bis 24 Stunden: keine Mahlzeit und keine Milch auf anderem Weg.
rule-feeds-few-first-day = Ab 24 bis 36 Stunden, solange die letzten 24 Stunden überwiegend im ersten Tag lagen: weniger als 3 Mahlzeiten in 24 Stunden.
rule-feeds-sleepy = Muss für die meisten Mahlzeiten geweckt werden.
rule-feeds-baby-hungry-after = Nach der letzten Mahlzeit noch hungrig.
rule-feeds-baby-sleepy-after = In der letzten Mahlzeit früh eingeschlafen.
rule-feeds-baby-unsettled-after = Weint oder überstreckt sich nach der letzten Mahlzeit.
rule-feeds-supplement = Pre-Nahrung oder Spenderinnenmilch in den letzten 24 Stunden.
rule-feeds-given-above-usual = Bis 96 Stunden: mehr Milch auf anderem Weg in 24 Stunden als acht Mahlzeiten am oberen Ende des Üblichen.
rule-feeds-very-often = Ab 24 Stunden: mehr als 18 Mahlzeiten in 24 Stunden.
rule-feeds-long = Eine beobachtete Mahlzeit dauerte länger als 40 Minuten.
rule-feeds-short = Die Mahlzeiten des Besuchs dauerten zusammen weniger als 5 Minuten, und das Kind beendete die letzte.
rule-feeds-often = Ab 24 Stunden: mindestens der Mindestwert der Station und höchstens 18 Mahlzeiten in 24 Stunden.
rule-feeds-baby-content = Nach der letzten Mahlzeit zufrieden.
rule-signs-position-good = Alle Zeichen der Haltung wurden bei jeder Mahlzeit gesehen.
rule-signs-attachment-good = Alle Zeichen des Anlegens wurden bei jeder Mahlzeit gesehen.
rule-rhythm-no-first-flow = Kein Milchfluss in so viel beobachteter Zeit an der Brust wie die Grenze der Station.
rule-rhythm-only-flutter = In mindestens 60 Sekunden Saugen kein Milchfluss und mindestens 90 % Flattern.
rule-rhythm-flow-short = Milchfluss wurde gesehen, insgesamt kürzer als der Mindestwert der Station.
rule-rhythm-no-swallow = Ab 72 Stunden: kein Schlucken in mindestens 120 Sekunden Saugen.
rule-rhythm-flow-seen = Milchfluss von mindestens dem Mindestwert der Station, mit Schlucken.
rule-pain-severe = 7 oder mehr, später als 20 Sekunden nach dem Anlegen.
rule-pain-severe-latching = 7 oder mehr in den ersten 20 Sekunden nach dem Anlegen, und das Kind kam in dieser Zeit ab, ohne dass weniger angegeben wurde, oder es war in derselben Mahlzeit noch einmal so.
rule-pain-through-feed = Der Wert der Station oder mehr jedes Mal nach den ersten 20 Sekunden, über mindestens 2 Minuten.
rule-pain-at-end = Der Wert der Station für das Ende oder mehr, zuletzt in einer beendeten Mahlzeit.
rule-pain-beyond-start = Der Wert der Station oder mehr später als 20 Sekunden nach dem Anlegen, nicht durchgehend.
rule-pain-after = Der Wert der Station oder mehr, nach dem Ende einer Mahlzeit berichtet.
rule-pain-settled = In der letzten Mahlzeit zuerst der Wert der Station oder mehr, zuletzt darunter und danach nicht wieder.
rule-pain-none = In der letzten Mahlzeit und danach immer unter dem Wert der Station, nach den ersten 20 Sekunden berichtet.
rule-nipple-damaged = Rissig oder blutend vor einer Mahlzeit oder verletzt danach.
rule-nipple-misshapen = Nach einer Mahlzeit abgeflacht oder mit Kante.
rule-nipple-blanched = Weiße Spitze nach einer Mahlzeit.
rule-breast-red = Eine rote oder heiße Stelle vor einer Mahlzeit.
rule-breast-lump = Ein Knoten vor einer Mahlzeit.
rule-breast-engorged = Prall und hart vor einer Mahlzeit.
rule-nipple-sore = Wund oder rot vor einer Mahlzeit.
rule-nipple-flat = Flach oder eingezogen vor einer Mahlzeit.
rule-breast-not-softer = Nach der letzten Mahlzeit nicht weicher.
rule-breast-not-filling = Beide Brüste vor einer Mahlzeit weich, ab 72 Stunden bis 7 Tage.
rule-nipple-rounded = Nach jeder Mahlzeit des Besuchs rund.
rule-breast-softer = Nach der letzten Mahlzeit weicher.
rule-risk-born-early = Vor 37 Wochen geboren, in den ersten 28 Tagen.
rule-risk-twins = Zwei oder mehr Kinder zusammen geboren, in den ersten 28 Tagen.
rule-risk-low-sugar = Vor 37 Wochen geboren, oder als früh geboren, klein oder mit Diabetes der Mutter vermerkt; in den ersten 48 Stunden.
rule-risk-jaundice = Vor 38 Wochen geboren, oder so oder mit behandelter Gelbsucht vermerkt; in den ersten 48 Stunden.
rule-risk-milk-later = Blutverlust, Brustoperation, Trennung oder Diabetes vermerkt, in den ersten 14 Tagen.
rule-risk-tongue = Eingeschränkte Zunge vermerkt, dazu Schnalzen, eine nach der Mahlzeit nicht runde Mamille oder Schmerz ab dem Wert der Station.
