## The Ward screen: pairs by what is due.

ward-title = Ward
ward-count = { $count } pairs, { $due } due, { $waiting } waiting for a receipt
ward-new-pair = New pair
ward-settings = Settings
ward-empty = No pairs yet.
ward-demo = Fill with an invented ward
ward-demo-quiet = To try things out. No real people.
ward-due-now = Look due since { $time }
ward-due-at = Next look { $time }
ward-not-seen = Not seen yet
ward-no-next-look = No next look set
ward-waiting-receipt = Waiting for a receipt
ward-visit-open = Visit open
# What was found last: { $level } "Act today", { $rule } "Large weight loss", { $count } other rules that ask for a doctor.
ward-found = { $count ->
    [0] { $level }: { $rule }
   *[other] { $level }: { $rule }, and { $count } more
}
# What got worse; { $before } the level of the visit before, "Keep watching"; { $grams } "−87".
ward-worse = Worse: at the visit before “{ $before }”
ward-falls = Weight falling further: { $grams } g in { $hours } h
ward-no-pin = No PIN is set: whoever holds this tablet can read all that is on it. Set one in Settings before the first real pair.
ward-month = Month
