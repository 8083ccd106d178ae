## Auf jedem Bildschirm zu sehen.

frame-back = Zurück
frame-close = Schließen
frame-running = Eine Mahlzeit läuft: { $bed }. Berühren, um dorthin zurückzukehren.
# The banner that stays until it is acknowledged. { $what } is the first finding, { $more } how many others.
frame-review =
    { $more ->
        [0] Sofort ärztlich beurteilen, { $bed }: { $what }. Berühren, um zu lesen und zu bestätigen.
       *[other] Sofort ärztlich beurteilen, { $bed }: { $what } und { $more } weitere. Berühren, um zu lesen und zu bestätigen.
    }
# The same where there is room for little.
frame-review-short =
    { $more ->
        [0] { $bed } · Sofort ärztlich beurteilen: { $what }
       *[other] { $bed } · Sofort ärztlich beurteilen: { $what } und { $more } weitere
    }
frame-no = Nein
frame-yes = Ja
frame-not-asked = nicht gefragt
frame-not-known = nicht bekannt
frame-caution = Feedside hält fest, zählt und rechnet. Es stellt keine Diagnose. Hausinterne Vorgaben und die Fachkraft entscheiden.
frame-set-aside = Jetzt ist eine neue, leere Datei in Gebrauch. Bitten Sie, wer dieses Gerät betreut, die alte aufzuheben; tippen Sie den Schlüssel des Stationsrechners noch einmal ein und lassen Sie ihn den Schlüssel dieses Tablets noch einmal scannen.
