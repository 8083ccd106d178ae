## Entries of the journal, each as one short line, on keys and in lists that take them back.

entry-last-day = Antworten zu den letzten 24 Stunden
entry-weighed = Gewicht { $grams } g
entry-nappy = Windel
# { $what } is the side, as "Left".
entry-breast-before = Brust und Mamille vorher: { $what }
entry-feed-started = Mahlzeit begonnen: { $what }
entry-feed-ended = Mahlzeit beendet
entry-tap-added = Ergänzt: { $what }
entry-touch-unresolved = Eine Berührung, die nicht zuzuordnen war
entry-unwatched-from = Weggeschaut
entry-unwatched-to = Wieder zugeschaut
entry-hold = Haltung: { $what }
entry-sign = { $sign }: { $state }
entry-pain = Schmerz { $score }
entry-pain-cannot-say = Schmerz: kann es nicht sagen
entry-tried = Versucht: { $what }
entry-note = Notiz: { $what }
entry-nipple-after = Mamille danach: { $what }
entry-breast-after = Brust danach: { $what }
entry-baby-state = Kind danach: { $what }
entry-boundary-moved = Eine Phase wurde verschoben
entry-plan = Vereinbart: { $what }
entry-next-look = Nächster Blick: { $what }
entry-other = Ein anderer Eintrag
