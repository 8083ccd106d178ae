### Eine Meldung für jedes gespeicherte Wort der Aufzeichnung. Die Kennung ist das Ding und das Wort.
### Zu sehen auf jedem Bildschirm und in jedem Bericht.

## Zeichen: der Name auf der Taste am Bett. Höchstens etwa 18 Zeichen.
## `-look`: worauf zu achten ist, ein Satz, auf der Karte nach langem Drücken.
## `-try`: was man meist versucht, auf derselben Karte.

sign-close = Eng am Körper
sign-close-look = Brust und Bauch liegen an der Mutter, ohne Lücke und ohne dass das Kind sich streckt.
sign-close-try = Das ganze Kind zur Brust holen und ein Kissen wegnehmen, das die Höhe vorgibt.
sign-head-free = Kopf frei
sign-head-free-look = Der Kopf kann nach hinten sinken: keine Hand und kein Arm drückt dagegen.
sign-head-free-try = Nacken und Schultern statt des Kopfes halten, Hand oder Arm tiefer legen.
sign-in-line = Gerade Linie
sign-in-line-look = Ohr, Schulter und Hüfte liegen in einer Linie, der Hals ist nicht verdreht.
sign-in-line-try = Den ganzen Körper zur Mutter drehen.
sign-nose-to-nipple = Nase an Mamille
sign-nose-to-nipple-look = Zu Beginn liegt die Nase auf Höhe der Mamille, sodass der Kopf dafür nach hinten sinkt.
sign-nose-to-nipple-try = Das Kind zu den Füßen hin schieben, bis die Nase an der Mamille ist, und auf den weiten Mund warten.
sign-can-be-kept-up = Bleibt bequem
sign-can-be-kept-up-look = Mutter und Kind sind gut gestützt, ihre Schultern sind locker, beide könnten so bleiben.
sign-can-be-kept-up-try = Rücken, Arme oder Füße stützen oder die Haltung wechseln.
sign-mouth-wide = Mund weit offen
sign-mouth-wide-look = Der Mund ist weit um die Brust geöffnet und nicht um die Mamille geschlossen.
sign-mouth-wide-try = Das Vakuum mit einem sauberen Finger lösen, auf einen weiteren Mund warten und neu anlegen.
sign-chin-in = Kinn an der Brust
sign-chin-in-look = Das Kinn drückt in die Brust.
sign-chin-in-try = Den Po näher heranholen, damit das Kinn zuerst kommt.
sign-nose-clear = Nase frei
sign-nose-clear-look = Die Nase ist frei, ohne dass jemand die Brust wegdrückt.
sign-nose-clear-try = Den Po näher heranholen und den Kopf nach hinten sinken lassen.
sign-cheeks-full = Wangen rund
sign-cheeks-full-look = Die Wangen bleiben voll und rund, ohne Grübchen beim Saugen.
sign-cheeks-full-try = Neu anlegen; bleiben die Grübchen, daran denken, den Mund ansehen zu lassen.
sign-more-areola-above = Mehr Areola oben
sign-more-areola-above-look = Über der Oberlippe ist mehr von der Areola zu sehen als unter der Unterlippe.
sign-more-areola-above-try = Außermittig neu anlegen: Kinn tiefer an der Brust, Mamille zum Gaumen gerichtet.
sign-lower-lip-out = Unterlippe außen
sign-lower-lip-out-look = Die Unterlippe ist nach außen gestülpt; die Oberlippe darf flach liegen.
sign-lower-lip-out-try = Neu anlegen, das Kind etwas tiefer.
sign-quiet = Kein Schnalzen
sign-quiet-look = Schlucken darf zu hören sein, aber kein Schnalzen oder Schmatzen.
sign-quiet-try = Das Kind näher holen oder neu anlegen; bleibt das Schnalzen, daran denken, den Mund ansehen zu lassen.

## Zustände eines Zeichens. Neben Haken, Fragezeichen und Kreuz.

state-seen = Gesehen
state-unclear = Unklar
state-not-seen = Nicht gesehen
state-not-looked = Noch nicht geschaut

## Die Brust, von der Mutter aus.

side-left = Links
side-right = Rechts

## Haltungen. Auf einer Taste: höchstens etwa 20 Zeichen.

hold-cradle = Wiegehaltung
hold-cross-cradle = Übergangshaltung
hold-underarm = Rückenhaltung
hold-laid-back = Zurückgelehnt
hold-side-lying = Seitenlage
hold-upright = Aufrecht
hold-twins-underarm = Zwillinge, Rücken
hold-twins-cradle = Zwillinge, Wiege
hold-twins-combined = Zwillinge, gemischt
hold-twins-laid-back = Zwillinge, liegend

## Was man an der Brust versuchen kann. Auf einer Taste: höchstens etwa 28 Zeichen.

adjustment-closer-in = Näher heranholen
adjustment-turn-body = Körper zur Mutter drehen
adjustment-free-head = Kopf frei lassen
adjustment-slide-to-nose = Bis Nase an Mamille
adjustment-chin-first = Po heran, Kinn zuerst
adjustment-attach-again = Neu anlegen, Mund weiter
adjustment-support-mother = Mutter stützen
adjustment-change-hold = Haltung wechseln
adjustment-compress = Brustkompression
adjustment-other-breast = Andere Brust
adjustment-wake = Hautkontakt, wecken
adjustment-soften-first = Erst etwas ausstreichen
adjustment-pause-and-burp = Pause und Aufstoßen
adjustment-other = Etwas anderes

## Was vereinbart ist. Eine Zeile im Plan und auf dem Blatt der Mutter.

plan-feed-often = Anlegen, sooft das Kind sich meldet, Tag und Nacht
plan-skin-to-skin = Viel Hautkontakt
plan-wake-for-feeds = Vorerst zum Trinken wecken
plan-keep-hold = Die Haltung behalten, die heute gut war
plan-work-on-attachment = Bei jedem Anlegen: Mund weit, Kinn an die Brust
plan-compressions = Brustkompression, wenn das Saugen nachlässt
plan-both-breasts = Beide Seiten anbieten
plan-express-after-feeds = Nach dem Stillen Milch gewinnen
plan-give-expressed-milk = Die gewonnene Milch nach dem Stillen geben, wie vereinbart
plan-weigh-again = Wieder wiegen
plan-count-nappies = Nasse Windeln und Stuhlwindeln zählen
plan-nipple-care = Mamillen pflegen
plan-watch-next-feed = Jemand sieht beim nächsten Stillen zu
plan-call-baby-doctor = Bei Verschlechterung Kinderärztin oder Kinderarzt rufen
plan-call-mother-doctor = Bei Verschlechterung die Ärztin oder den Arzt der Mutter rufen
plan-call-midwife-in-charge = Bei Verschlechterung die leitende Hebamme rufen
plan-call-feeding-team = Bei Verschlechterung das Stillteam rufen
plan-medical-team-told = Ärztin oder Arzt ist verständigt

## Warum ein Paar mehr Hilfe brauchen kann.

risk-preterm = Vor 37 Wochen geboren
risk-early-term = Mit 37 oder 38 Wochen geboren
risk-small-baby = Klein für die Schwangerschaftswoche
risk-diabetes = Mutter hat Diabetes
risk-blood-loss = Großer Blutverlust bei der Geburt
risk-separated = Nach der Geburt getrennt
risk-jaundice-treated = Gelbsucht behandelt, jetzt oder beim Geschwister
risk-earlier-trouble = Stillprobleme bei früherem Kind
risk-breast-surgery = Operation an der Brust
risk-tongue = Zunge wirkt eingeschränkt
risk-medicine = Medikament, das fürs Stillen wichtig sein kann
risk-first-baby = Erstes Kind

## Warum die Fachkraft gerufen wurde.

reason-first-look = Erste Beobachtung
reason-pain = Schmerzen
reason-not-attaching = Fasst die Brust nicht
reason-sleepy = Zu schläfrig
reason-weight = Gewicht
reason-nappies = Wenige Windeln
reason-jaundice = Gelbe Haut
reason-milk-supply = Sorge um die Milch
reason-engorgement = Volle, harte Brüste
reason-twins = Zwillinge oder mehr
reason-mother-asked = Wunsch der Mutter
reason-before-home = Vor der Entlassung

## Geschlecht des Kindes, wie der Wachstumsstandard es braucht.

sex-female = Mädchen
sex-male = Junge
sex-not-stated = Keine Angabe

## Art der Geburt.

birth-vaginal = Vaginal
birth-assisted = Zange oder Saugglocke
birth-caesarean = Kaiserschnitt

## Farbe des Stuhls.

stool-black = Schwarz, klebrig (Mekonium)
stool-green = Grün oder braun
stool-yellow = Gelb
stool-pale = Hell, lehmfarben
stool-bloody = Mit Blut

## Wie weit gelbe Haut zu sehen ist.

jaundice-none = Keine
jaundice-face = Nur Gesicht
jaundice-body = Gesicht und Körper
jaundice-extensive = Bis Hände und Füße, oder sehr kräftig

## Warnzeichen beim Kind. Auf einer Taste und im Bericht.

baby-danger-hard-to-wake = Schwer zu wecken
baby-danger-floppy = Schlaff
baby-danger-fit = Krampfanfall
baby-danger-breathing = Schnelle, angestrengte oder stöhnende Atmung
baby-danger-colour = Blau, grau, marmoriert oder sehr blass
baby-danger-green-vomit = Grünes Erbrechen
baby-danger-bulging-fontanelle = Gewölbte Fontanelle
baby-danger-rash = Ausschlag, der auf Druck nicht verblasst
baby-danger-cord = Nabel rot oder eitrig
baby-danger-not-feeding = Trinkt gar nicht
baby-danger-jaundice-first-day = Gelb in den ersten 24 Stunden
baby-danger-distension = Geblähter, harter Bauch

## Warnzeichen bei der Mutter. Auf einer Taste und im Bericht.

mother-danger-bleeding = Starke oder zunehmende Blutung, oder Schwäche dabei
mother-danger-infection = Fieber, Schüttelfrost, Bauchschmerz oder übel riechender Wochenfluss
mother-danger-headache = Kopfschmerz mit Sehstörung oder Erbrechen
mother-danger-calf = Schmerz oder Schwellung in einer Wade
mother-danger-chest = Atemnot oder Brustschmerz
mother-danger-sepsis = Verwirrt, marmoriert oder kein Urin
mother-danger-breast = Heiße rote Brust, die sich ausbreitet, oder möglicher Abszess
mother-danger-mind = Gedanken, sich oder dem Kind etwas anzutun, oder wahnhafte Vorstellungen

## Brüste und Mamillen vor dem Stillen.

breast-soft = Weich
breast-filling = Füllt sich
breast-engorged = Voll, prall, hart
breast-red = Rote oder heiße Stelle
breast-lump = Knoten
nipple-intact = Unauffällig
nipple-flat = Flach
nipple-inverted = Eingezogen
nipple-sore = Wund oder rot
nipple-cracked = Rissig oder mit Blase
nipple-bleeding = Blutet

## Nach dem Stillen.

nipple-after-rounded = Rund, gleiche Farbe
nipple-after-flattened = Abgeflacht oder schräg
nipple-after-creased = Kante oder Streifen
nipple-after-blanched = Weiße Spitze
nipple-after-damaged = Rissig, mit Blase oder blutend
breast-after-softer = Weicher
breast-after-unchanged = Keine Änderung zu fühlen
breast-after-unclear = Nicht zu sagen
baby-state-content = Zufrieden
baby-state-hungry = Noch hungrig
baby-state-sleepy = Früh eingeschlafen, schwer zu wecken
baby-state-unsettled = Weint oder überstreckt sich

## Wer die Mahlzeit beendet hat.

ended-by-baby = Das Kind
ended-by-mother = Die Mutter
ended-by-specialist = Die Fachkraft
ended-by-interrupted = Unterbrochen

## Wann gewogen wurde.

weighing-routine = Ohne Bezug zu einer Mahlzeit
weighing-before-feed = Vor dem Stillen
weighing-after-feed = Nach dem Stillen

## Zeilen im Verlauf der Mahlzeit.

tap-on = An der Brust
tap-off = Brust losgelassen
tap-suck = Saugen
tap-suck-swallow = Saugen mit Schlucken
tap-swallow = Schlucken allein
tap-unwatched = Ab hier unbeobachtet
tap-watched = Wieder beobachtet
tap-end = Mahlzeit beendet
