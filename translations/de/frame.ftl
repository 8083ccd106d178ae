## Auf jedem Bildschirm zu sehen.

frame-back = Zurück
frame-close = Schließen
frame-running = Es läuft ein Stillen: { $bed }. Berühren, um dorthin zurückzukehren.
frame-no = Nein
frame-yes = Ja
frame-not-asked = nicht gefragt
frame-not-known = nicht bekannt
frame-caution = Feedside hält fest, zählt und rechnet. Es stellt keine Diagnose. Die Regeln des Hauses und die Fachperson entscheiden.
