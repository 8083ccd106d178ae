## The bedside screen. Keys are narrow: two short words at the most.

bedside-suck = Suck
bedside-suck-swallow = Suck + swallow
bedside-looked-away = Looked away
bedside-watching-again = Watching again
bedside-swallow-only = Swallow only
bedside-take-back = Take back
bedside-other-breast = Other breast
bedside-came-off = Came off
bedside-back-on = Back on
bedside-change-hold = Change hold
bedside-try-change = Try a change
bedside-end-feed = End feed
bedside-page-position = Position
bedside-page-attachment = Attachment
bedside-page-pain = Pain, acts
bedside-tried-early = too early
bedside-tried-ready = compare
bedside-compare-before = before
bedside-compare-after = after
bedside-state-seen = seen
bedside-state-unclear = unclear
bedside-state-not-seen = not seen
bedside-pain-now = Pain now
bedside-pain-cannot-say = cannot say
bedside-pain-early = Pain now: has the early pain gone?
bedside-now = now
bedside-place = { $side } · { $hold }
bedside-safe = { $count ->
    [one] { $count } entry safe
   *[other] { $count } entries safe
}
bedside-saving = { $safe } of { $count ->
    [one] { $count } entry safe
   *[other] { $count } entries safe
}
bedside-phase-for = for { $time }, { $sure }
bedside-sure = quite sure
bedside-fairly-sure = fairly sure
bedside-unsure = not sure
bedside-sucks-a-minute = sucks per minute
bedside-sucks-a-swallow = sucks per swallow
bedside-in-this-run = in this run
bedside-resting = resting
bedside-waiting = Waiting for sucks
bedside-question-silent = No tap for { $seconds } s. Resting, or did you look away?
bedside-question-resting = Resting
bedside-question-away = Looked away
bedside-hold-title = Which hold now?
bedside-adjustment-title = What is being tried?
bedside-end-title = Who ended the feed?
bedside-strip = The last two minutes: { $sucks } sucks, { $swallows } swallows
# Touches that the screen could not tell apart, in the top line.
bedside-unresolved = { $count ->
        [one] 1 touch unclear
       *[other] { $count } touches unclear
    }
# Before and after something that was tried.
bedside-compare-heading = { $what }, at { $time }
bedside-compare-early = Too early to tell: { $seconds } of { $least } watched seconds.
bedside-compare-spans = { $before } watched before, { $after } after. A difference is stated only where the intervals do not overlap.
bedside-compare-pain = Pain
bedside-compare-rate = Sucks per minute
bedside-compare-ratio = Sucks per swallow
bedside-compare-interval = { $value } ({ $low } to { $high })
bedside-compare-none = not asked
bedside-compare-few = too few
bedside-compare-lower = lower
bedside-compare-higher = higher
bedside-compare-not-clear = no clear difference
bedside-compare-same = the same
bedside-compare-changed = changed
bedside-sign-help = { $look }
    { $try }
