## Der Bildschirm Paar: die Geschichte bisher, und das Formular.

pair-facts = Dieses Paar
pair-weights = Gewicht
pair-output = Letzte 24 Stunden, zuletzt gefragt
pair-visits = Besuche
pair-no-visits = Noch keine.
pair-edit = Ändern
pair-save = Speichern
pair-begin = Besuch beginnen
pair-go-on = Besuch fortsetzen
pair-new = Neues Paar
pair-birth = Geboren
pair-gestation = Schwangerschaft
pair-birth-weight = Geburtsgewicht
pair-way = Geburtsmodus
pair-sex = Kind
pair-reasons = Warum gerufen
pair-risks = Zu bedenken
# Ein Alter zählt ganze Tage, 0 in den ersten 24 Stunden; ein Lebenstag zählt ab 1.
pair-days-hours =
    { $days ->
        [one] { $days } Tag, { $hours } h
       *[other] { $days } Tage, { $hours } h
    }
pair-weeks-days = { $weeks } Wochen + { $days }
pair-grams = { $grams } g
pair-centile = WHO-Perzentile { $centile }, z { $z }
pair-no-weight = Noch kein Gewicht
pair-expected = Erwartet am { $day }. Lebenstag: mindestens { $wet } nasse, mindestens { $dirty } mit Stuhl
pair-visit = { $date }, { $by }
pair-visit-open = offen
pair-visit-signed = unterschrieben, wartet auf Quittung
pair-visit-signed-only = unterschrieben
pair-visit-replaced = durch eine spätere Fassung ersetzt
pair-visit-received = übergeben, Quittung { $receipt }
pair-visit-amends = ersetzt eine frühere Fassung
pair-form-bed = Zimmer und Bett
pair-form-initials = Initialen
pair-form-birth = Geboren (Datum und Zeit)
pair-form-birth-example = 2026-11-22 04:30
pair-form-weight = Geburtsgewicht in g
pair-form-gestation = Wochen+Tage
pair-form-sex = Kind
pair-form-way = Geburtsmodus
pair-form-reasons = Warum die Fachkraft gerufen wurde
pair-form-risks = Zu bedenken
pair-trouble-bed = Bitte das Bett angeben.
pair-trouble-initials = Bitte Initialen angeben.
pair-trouble-birth = Bitte die Geburtszeit als 2026-11-22 04:30 schreiben, nicht in der Zukunft.
pair-trouble-weight = Das Geburtsgewicht ist eine ganze Zahl von 300 bis 7000 Gramm. Leer lassen, wenn nicht bekannt.
pair-trouble-gestation = Bitte als 39+4 schreiben, von 22+0 bis 44+6. Leer lassen, wenn nicht bekannt.
pair-drawn = Als Kurve
pair-table = In Zahlen
pair-no-chart = Ohne Geburtsgewicht gibt es keine Veränderung zu zeichnen. Die Zahlen stehen in der Tabelle.
pair-chart-weights = Gewogen: Veränderung zum Geburtsgewicht nach Alter in Tagen. Hohl: bekleidet
# Die Quelle kennt nur diese beiden Geburtsmodi.
pair-chart-medians-vaginal = Veröffentlichter Median der Abnahme nach vaginaler Geburt (Flaherman 2015)
pair-chart-medians-caesarean = Veröffentlichter Median der Abnahme nach Kaiserschnitt (Flaherman 2015)
pair-chart-line = −2,5 SDS der Gewichtsänderung (van Dommelen 2007): darunter ärztlich beurteilen lassen
pair-chart-least = Mindestens erwartet in diesem Alter (britische Checklisten)
pair-chart-day =
    { $day ->
        [one] { $day } Tag
       *[other] { $day } Tage
    }
# { $wet }, { $dirty }, { $feeds } Zahlen, oder ein Strich, wo nicht gefragt wurde.
pair-day = { $wet } nass, { $dirty } mit Stuhl, { $feeds } Mahlzeiten
pair-median = Veröffentlichter Median der Abnahme
pair-median-at-vaginal = nach vaginaler Geburt, im Alter von { $hours } h
pair-median-at-caesarean = nach Kaiserschnitt, im Alter von { $hours } h
pair-line =
    { $day ->
        [one] −2,5-SDS-Linie im Alter von { $day } Tag
       *[other] −2,5-SDS-Linie im Alter von { $day } Tagen
    }
pair-line-below = Das Gewicht liegt darunter.
pair-line-above = Das Gewicht liegt nicht darunter.
pair-gain = Zunahme am Tag
pair-grams-a-day = { $grams } g am Tag
pair-between = { $low } bis { $high }
pair-back = Geburtsgewicht wieder erreicht
pair-test-weighing = Letzte Stillprobe
pair-millilitres = { $ml } ml
pair-below-resolution = Die Waage kann es nicht von nichts unterscheiden.
pair-asked = Stimmen { $grams }? Gewogen { $time }
pair-it-is-right = Es stimmt
pair-correct-it = Berichtigen
pair-twin = Noch ein Kind dieser Mutter
pair-language = Sprache der Mutter
pair-babies = Zusammen geborene Kinder
pair-shares-mother = hat dieselbe Mutter wie ein anderes Paar
pair-mother-number = Nummer der Mutter auf der Station
pair-baby-number = Nummer des Kindes auf der Station
pair-form-language = Sprache der Mutter
pair-trouble-number = Eine Nummer hat höchstens 40 Zeichen.

## Sprachen, die eine Mutter sprechen kann.

language-en = Englisch
language-de = Deutsch
language-ar = Arabisch
language-fa = Persisch
language-fr = Französisch
language-pl = Polnisch
language-ro = Rumänisch
language-ru = Russisch
language-so = Somali
language-es = Spanisch
language-tr = Türkisch
language-uk = Ukrainisch
