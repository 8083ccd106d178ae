## Entries of the journal, each as one short line, on keys and in lists that take them back.

entry-last-day = Answers about the last 24 hours
entry-weighed = Weight { $grams } g
entry-nappy = Nappy
# { $what } is the side, as "Left".
entry-breast-before = Breast and nipple before: { $what }
entry-feed-started = Feed started: { $what }
entry-feed-ended = Feed ended
entry-tap-added = Added: { $what }
entry-touch-unresolved = A touch that could not be told apart
entry-unwatched-from = Looked away
entry-unwatched-to = Watching again
entry-hold = Hold: { $what }
entry-sign = { $sign }: { $state }
entry-pain = Pain { $score }
entry-pain-cannot-say = Pain: cannot say
entry-tried = Tried: { $what }
entry-note = Note: { $what }
entry-nipple-after = Nipple after: { $what }
entry-breast-after = Breast after: { $what }
entry-baby-state = Baby after: { $what }
entry-boundary-moved = A phase was moved
entry-plan = Agreed: { $what }
entry-next-look = Next look: { $what }
entry-other = Another entry
