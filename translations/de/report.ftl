### Seiten, die das Tablet verlassen: die Notiz für einen Scanner und die einfache Seite.

## Die Notiz: eine Zeile, im Ganzen höchstens 900 Zeichen, von einem Scanner in ein Notizfeld getippt.
## Nur einfache Wörter und Zeichen; jede Nachricht ist ein Satz oder der Anfang eines Satzes. Kurz.

# $level wie "Heute handeln", $finding die Zeile eines Befunds.
note-finding = { $level }: { $finding }.
# Ein weiterer Befund der eben genannten Stufe.
note-finding-more = { $finding }.
note-no-finding = Keine Regel verlangte etwas.
# $missing eine Liste dessen, was fehlte.
note-unjudged =
    { $count ->
        [one] 1 Regel war nicht zu beurteilen, es fehlt: { $missing }.
       *[other] { $count } Regeln waren nicht zu beurteilen, es fehlt: { $missing }.
    }
note-amended = Geänderter Eintrag, ersetzt einen früheren.
note-weight = Gewicht { $grams } g.
# $change wie "-7,1 %".
note-weight-change = Gewicht { $grams } g, { $change } zum Geburtsgewicht.
# $facts eine Liste der folgenden Nachrichten.
note-feed = Mahlzeit { $number } { $side }: { $facts }.
note-minutes = { $minutes } min
note-unwatched = davon { $minutes } min unbeobachtet
# $clock wie "1:10", Minuten und Sekunden nach dem Beginn.
note-first-flow = Milchfluss ab { $clock }
note-flow = insgesamt { $minutes } min
note-no-flow = kein Milchfluss gesehen
note-counts = { $sucks } Saugzüge, { $swallows } Schlucke gezählt
note-sucks-per-swallow = { $value } ({ $low } bis { $high }) Saugzüge je Schluck im Fluss
note-doubts = fraglich: { $doubts }
# wenige Wörter, für note-doubts
note-doubt-few-swallows = wenige Schlucke bemerkt
note-doubt-few-sucks = wenige Saugzüge getippt
note-doubt-long-unwatched = viel unbeobachtet
note-doubt-too-fast = schneller getippt, als ein Kiefer sich bewegt
note-doubt-out-of-order = in falscher Reihenfolge getippt
note-doubt-unresolved-touches = Berührungen nicht zuzuordnen
note-doubt-long-silence = lange nichts getippt
note-doubt-phases-unsure = Phasen schwer zu unterscheiden
note-nipple = Mamille danach: { $nipple }
note-nipple-unseen = Mamille danach nicht angesehen
# Where feeds differ. $signs as the sentences below.
note-signs-feed = Mahlzeit { $number }: { $signs }
note-signs-all = Alle Zeichen für Haltung und Anlegen gesehen.
note-signs-none = Zeichen für Haltung und Anlegen nicht angesehen.
note-signs-missing = Zeichen nicht gesehen: { $signs }.
note-signs-unclear = Zeichen unklar: { $signs }.
note-signs-unlooked =
    { $count ->
        [one] 1 Zeichen nicht angesehen.
       *[other] { $count } Zeichen nicht angesehen.
    }
# $scores wie "6, 3, 0", in der Reihenfolge, in der sie genannt wurden.
note-pain = Schmerz, 0 bis 10, der Reihe nach: { $scores }.
note-pain-cannot-say = kann es nicht sagen
note-pain-not-asked = Schmerz nicht erfragt.
note-plan = Vereinbart: { $items }.
note-own-words =
    { $count ->
        [one] 1 Planpunkt in eigenen Worten steht im Eintrag.
       *[other] { $count } Planpunkte in eigenen Worten stehen im Eintrag.
    }
note-next-look = Nächste Kontrolle: { $due }.
note-shortened =
    { $count ->
        [one] Gekürzt: 1 Teil ausgelassen, siehe Eintrag.
       *[other] Gekürzt: { $count } Teile ausgelassen, siehe Eintrag.
    }
# Immer das Ende der Notiz. $id acht Buchstaben und Ziffern.
note-end = Beschreibt, stellt keine Diagnose. Besuch { $id }

## Die einfache Seite.

report-title = Beobachtete Mahlzeit: Bericht eines Besuchs
report-pair = Bett: { $bed }, { $initials }
report-visit = Besuch { $id }, begonnen { $began }, durch { $specialist }
report-amends = Geändert: dieser Bericht ersetzt den Besuch { $id }.
report-signed = Unterschrieben von { $by }, { $when }
report-not-signed = Nicht unterschrieben.
report-no-finding = Keine Regel verlangte etwas.
report-source = Quelle: { $source }
report-tries = Üblich ist: { $tries }
report-call = Rufen: { $whom }
report-acknowledged = Zur Kenntnis genommen von { $by }, { $when }
report-not-acknowledged = Noch nicht zur Kenntnis genommen.
report-unjudged = Nicht zu beurteilen
report-unjudged-rule = * { $rule }: nicht zu beurteilen, es fehlt: { $missing }
report-about = Mutter und Kind
report-born = Geboren
report-gestation = Schwangerschaftsdauer bei Geburt
report-weeks-days = { $weeks } Wochen { $days } Tage
report-birth-weight = Geburtsgewicht
report-way-of-birth = Geburtsmodus
report-risk-notes = Braucht vielleicht mehr Hilfe wegen
report-reasons = Gerufen wegen
report-last-day = Die letzten 24 Stunden, wie erzählt
report-last-day-not-asked = Nicht erfragt.
report-feeds = Mahlzeiten an der Brust
report-wet = Nasse Windeln
report-dirty = Stuhlwindeln
report-stool = Letzter Stuhl
report-urates = Rosa oder ziegelrote Flecken (Ziegelmehl)
report-meconium = Je Stuhl abgesetzt (Mekonium)
report-dark-urine = Dunkler Urin, der die Windel färbt
report-hours-since-wet = Seit der letzten nassen Windel
report-expressed = Abgepumpte Milch gegeben
report-supplement = Pre-Nahrung oder Spenderinnenmilch gegeben
report-sleepy = Muss zu den meisten Mahlzeiten geweckt werden
report-jaundice = Gelbe Haut
report-temperature = Temperatur
report-baby-danger = Warnzeichen beim Kind
report-mother-danger = Warnzeichen bei der Mutter
report-asked-none = gefragt, keine
report-unknown = nicht bekannt
report-not-asked = nicht erfragt
report-not-looked = nicht angesehen
report-yes = ja
report-no = nein
report-weight = Gewicht und Ausscheidung
report-weight-none = Bei diesem Besuch nicht gewogen.
# $moment wie "vor dem Stillen", $clothes und $step Nachrichten dieser Datei.
report-weighed = { $when }: { $grams } g, { $moment }, { $clothes }, { $step }
report-told-later = früher gewogen, beim Besuch berichtet
report-clothed = in Kleidung oder Windel
report-unclothed = unbekleidet
report-step = Teilung der Waage { $grams } g
report-step-unknown = Teilung der Waage nicht bekannt
# Ein 95-%-Intervall oder der übliche Bereich, hinter seiner Zahl.
report-interval = ({ $low } bis { $high })
report-range = { $low } bis { $high }
report-nappy = { $when }: Windel, { $what }
report-nappy-wet = nass
report-nappy-heavy = nass und schwer
report-nappy-not-wet = nicht nass
report-before = Vor dem Stillen
report-breast-before = { $side }: Brust { $breast }, Mamille { $nipple }
report-feed = Mahlzeit { $number }, { $side }
report-holds = Stillhaltung
report-feed-ended = { $began } bis { $ended }, { $clock } lang, beendet durch: { $by }
report-feed-running = Begonnen { $began }, nicht beendet.
report-no-rhythm = Der Rhythmus wurde nicht berechnet.
# $watched und $total wie "12:40", Minuten und Sekunden.
report-counts = Beobachtet { $watched } von { $total }: { $sucks } Saugzüge, { $swallows } Schlucke gezählt
report-first-flow =
    { $count ->
        [one] Milchfluss zuerst bei { $clock }, ein Abschnitt
       *[other] Milchfluss zuerst bei { $clock }, { $count } Abschnitte
    }
report-no-flow = In der beobachteten Zeit wurde kein Milchfluss gesehen.
report-phases = Zeit in jeder Phase
report-whole-feed = ganze Mahlzeit
# $rate und $ratio Zahlen mit ihren Intervallen.
report-rates = { $phase }: Saugzüge je Minute { $rate }, Saugzüge je Schluck { $ratio }
report-too-few = zu wenige für eine Aussage
report-runs =
    { $runs ->
        [one] Eine Saugserie mit { $sucks } Saugzügen, { $seconds } s
       *[other] { $runs } Saugserien, die Hälfte davon mit { $sucks } Saugzügen oder mehr; Median { $seconds } s
    }
report-rests =
    { $rests ->
        [one] Eine Pause, { $seconds } s
       *[other] { $rests } Pausen; Median { $seconds } s
    }
report-doubts = Diesen Zahlen weniger trauen wegen
report-pain = Schmerz, 0 bis 10
report-tried = Versucht
report-nipple-after = Mamille danach
report-breast-after = Brust danach
report-baby-after = Kind danach
report-unresolved =
    { $count ->
        [one] Eine Berührung konnte der Bildschirm nicht auseinanderhalten.
       *[other] { $count } Berührungen konnte der Bildschirm nicht auseinanderhalten.
    }
report-signs = Zeichen für Haltung und Anlegen
report-signs-missing = Nicht gesehen
report-signs-unclear = Unklar
report-signs-seen = Gesehen
report-signs-unlooked = Nicht angesehen
report-notes = Notizen
report-plan = Vereinbart
report-plan-none = Nichts vereinbart.
report-next-look = Nächste Kontrolle
report-next-look-none = nicht festgelegt
report-odd =
    { $count ->
        [one] Ein Eintrag des Journals passt nicht an seine Stelle.
       *[other] { $count } Einträge des Journals passen nicht an ihre Stelle.
    }
report-policy = Beurteilt nach den Stationsregeln { $name }, Version { $version }, { $hash }
report-versions = Feedside { $app }; Regeln { $rhythm }, { $growth }, { $findings }
report-caution = Diese Seite beschreibt, was gesehen und berechnet wurde. Sie stellt keine Diagnose. Hausinterne Vorgaben und die Fachkraft entscheiden.
report-hours =
    { $count ->
        [one] 1 Stunde
       *[other] { $count } Stunden
    }
report-days =
    { $count ->
        [one] 1 Tag
       *[other] { $count } Tage
    }
report-unit-sd = SD
report-unit-day = Tage
report-unit-gram-per-day = g am Tag
report-at-least = mindestens { $low }
report-under = unter { $high }
report-no-figures = Es wurden keine Werte berechnet.
report-figures-missing = Einige Werte sind nicht da, es fehlt: { $missing }

## Werte zu Gewicht und Ausscheidung auf der einfachen Seite: Beschriftung vor einer Zahl.

figure-age = Alter jetzt
figure-weight = Gewicht, das zählt
figure-weight-age = Alter beim Wiegen
figure-weight-change-grams = Veränderung zum Geburtsgewicht
figure-weight-change = Veränderung zum Geburtsgewicht in Prozent
figure-weight-clothed-since = Späteres Gewicht in Kleidung
figure-median-change = Veröffentlichter Median der Veränderung in etwa diesem Alter
figure-median-change-age = Dieser Median gilt für das Alter von
figure-sds-line = Linie von -2,5 SDS für die Veränderung in diesem Alter
figure-who-z = WHO-z für das Gewicht in diesem Alter
figure-who-centile = WHO-Perzentile
figure-back-at-birth-weight = Geburtsgewicht wieder erreicht im Alter von
figure-gain-per-day = Zunahme bis zum letzten Gewicht
figure-test-weighing = Trinkmenge nach Stillprobe
figure-wet-expected = Nasse Windeln, an diesem Tag erwartet
figure-dirty-expected = Stuhlwindeln, an diesem Tag erwartet
figure-usual-feed = Übliche Menge einer Mahlzeit in diesem Alter, keine Verordnung
figure-weight-asked = Nachzufragen, Gewicht von
