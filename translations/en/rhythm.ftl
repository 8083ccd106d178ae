## Phases: shown at the bedside, in the strip and in reports. Short.

phase-quick = Quick sucks
phase-flow = Milk flowing
phase-flutter = Flutter
phase-rest = Resting
phase-off = Off the breast
phase-unwatched = Not watched

## Doubts: one sentence each, beside the numbers that they are about.

doubt-few-swallows = Few swallows were noticed, so sucks per swallow is uncertain.
doubt-few-sucks = Few sucks were tapped, so rates say little.
doubt-long-unwatched = Much of the feed was not watched.
doubt-too-fast = Some taps came faster than a jaw moves; they count once in the rates.
doubt-out-of-order = Some taps came out of order and were put where their time belongs.
doubt-unresolved-touches = Some touches could not be told apart, so the counts may be off.
doubt-long-silence = There is a long stretch without a tap: the baby rested, or nobody tapped.
doubt-phases-unsure = The phases are hard to tell apart in this feed.
