## Auf jedem Bildschirm zu sehen.

frame-back = Zurück
frame-close = Schließen
frame-running = Es läuft ein Stillen: { $bed }. Berühren, um dorthin zurückzukehren.
frame-no = Nein
frame-yes = Ja
frame-not-asked = nicht gefragt
frame-not-known = nicht bekannt
frame-caution = Feedside hält fest, zählt und rechnet. Es stellt keine Diagnose. Die Regeln des Hauses und die Fachperson entscheiden.
frame-set-aside = Jetzt ist eine neue, leere Datei in Gebrauch. Bitten Sie, wer dieses Gerät betreut, die alte aufzuheben; tippen Sie den Schlüssel des Stationsrechners noch einmal ein und lassen Sie ihn den Schlüssel dieses Tablets noch einmal scannen.
