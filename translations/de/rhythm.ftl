## Phasen: am Bett, im Streifen und in Berichten. Kurz.

phase-quick = Schnelles Saugen
phase-flow = Milch fließt
phase-flutter = Flattersaugen
phase-rest = Pause
phase-off = Von der Brust ab
phase-unwatched = Nicht beobachtet

## Zweifel: je ein Satz, neben den Zahlen, um die es geht.

doubt-few-swallows = Es wurden wenige Schlucke bemerkt, daher ist die Zahl der Saugzüge je Schluck unsicher.
doubt-few-sucks = Es wurden wenige Saugzüge getippt, daher sagen die Raten wenig.
doubt-long-unwatched = Ein großer Teil der Mahlzeit wurde nicht beobachtet.
doubt-too-fast = Manchmal wurde schneller getippt, als ein Kiefer sich bewegt; in den Raten zählt das einmal.
doubt-out-of-order = Manche Eingaben kamen in falscher Reihenfolge und wurden an ihre Zeit gesetzt.
doubt-unresolved-touches = Manche Berührungen ließen sich nicht zuordnen, daher können die Zählungen abweichen.
doubt-long-silence = Eine lange Zeit wurde nichts getippt: Das Kind ruhte, oder niemand hat getippt.
doubt-phases-unsure = Die Phasen lassen sich in dieser Mahlzeit schwer unterscheiden.
