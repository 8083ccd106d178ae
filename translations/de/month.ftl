### Wie das Stillen auf der Station in den letzten Tagen aussah.

## Der Bildschirm. $days ist ganz.

month-title = Die letzten { $days } Tage
# Am Fuß. Zwei Sätze.
month-caution = Gezählt ist, was auf diesem Tablet notiert wurde, ohne die Paare, die nicht mehr darauf sind. Wenige Besuche sagen wenig, und keine Zahl ist ein Maß für die Arbeit einer Person.
month-none = Kein Besuch in diesen Tagen.
# Solange noch Besuche durchgesehen werden.
month-working = { $left ->
    [one] Es wird noch gezählt: { $left } Besuch
   *[other] Es wird noch gezählt: { $left } Besuche
}

## Wie eine Zahl geschrieben wird. In der rechten von zwei Spalten, also kurz.

month-hours = { $hours } Std. { $minutes } Min.
month-share = { $of } von { $all }
month-share-percent = { $of } von { $all } ({ $percent })
month-nothing = nichts zu zählen
month-none-noted = nichts notiert
month-times = { $count }-mal
month-spread = { $median } ({ $low } bis { $high })
month-spread-quiet = { $count } Mahlzeiten, die Hälfte liegt dazwischen
month-too-few = zu wenige für eine Aussage
month-too-few-quiet = { $count ->
    [one] { $count } Mahlzeit
   *[other] { $count } Mahlzeiten
}

## Besuche. Bezeichnungen: höchstens etwa 30 Zeichen. Leise Zeilen: wovon ein Anteil ist.

month-visits-heading = Besuche
month-visits = Besuche
month-pairs = Paare
month-feeds = Mahlzeiten
month-watched = Beobachtete Zeit
month-review-quiet = der beurteilten Besuche
month-signed = Unterschrieben
month-signed-quiet = aller Besuche
month-receipt = Mit Quittung
month-waiting = Warten auf Quittung
month-receipt-quiet = der unterschriebenen Besuche

## Milch.

month-milk-heading = Milch
month-flow = Milchfluss gesehen
month-flow-quiet = der Mahlzeiten, die mindestens { $minutes } Minuten beobachtet wurden
month-first-flow = Erster Milchfluss nach
month-flow-time = Milchfluss je Mahlzeit
month-sucking = Anteil Saugen

## Schmerz. $score ist 4.

month-pain-heading = Schmerz
month-pain-told = Schmerz angegeben
month-pain-told-quiet = aller Mahlzeiten
month-pain-first = Zuerst { $score } oder mehr
month-pain-last = Zuletzt { $score } oder mehr
month-pain-quiet = der Mahlzeiten, bei denen dann ein Wert genannt wurde

## Zeichen, jedes mit seinem Namen.

month-signs-heading = Zeichen, am Ende nicht gesehen
month-signs-quiet = der Besuche, in denen danach gesehen wurde
month-signs-all = Zeichen

## Was versucht wurde, jedes mit seinem Namen.

month-tried-heading = Am häufigsten versucht
month-tried-all = Versuche

## Die Mamille nach dem Stillen.

month-nipple-heading = Mamille nach dem Stillen
month-nipple-misshapen = Form nicht rund
month-nipple-blanched = Weiße Spitze
month-nipple-damaged = Wunde
month-nipple-quiet = der Mahlzeiten, nach denen sie beschrieben wurde
