### Pages that leave the tablet: the note for a scanner, and the plain page.

## The note: one line, at most 900 characters in all, typed by a scanner into a notes field.
## Plain words and plain signs only; each message is a sentence or the start of one. Short.

# $level as "Act today", $finding the line of one finding.
note-finding = { $level }: { $finding }.
# Another finding of the level just named.
note-finding-more = { $finding }.
note-no-finding = No rule asked for anything.
# $missing a list of what was missing.
note-unjudged =
    { $count ->
        [one] 1 rule could not be judged, missing: { $missing }.
       *[other] { $count } rules could not be judged, missing: { $missing }.
    }
note-amended = Amended record, replaces an earlier one.
note-weight = Weight { $grams } g.
# $change as "-7.1%".
note-weight-change = Weight { $grams } g, { $change } from birth weight.
# $facts a list of the messages that follow.
note-feed = Feed { $number } { $side }: { $facts }.
note-minutes = { $minutes } min
note-unwatched = { $minutes } min of it unwatched
# $clock as "1:10", minutes and seconds after the start.
note-first-flow = milk flowing from { $clock } on
note-flow = for { $minutes } min in all
note-no-flow = no milk flow seen
note-counts = { $sucks } sucks, { $swallows } swallows counted
note-sucks-per-swallow = { $value } ({ $low } to { $high }) sucks per swallow in flow
note-doubts = in doubt: { $doubts }
# a few words, of note-doubts
note-doubt-few-swallows = few swallows noticed
note-doubt-few-sucks = few sucks tapped
note-doubt-long-unwatched = much not watched
note-doubt-too-fast = taps faster than a jaw
note-doubt-out-of-order = taps out of order
note-doubt-unresolved-touches = touches not told apart
note-doubt-long-silence = long without a tap
note-doubt-phases-unsure = phases hard to tell apart
note-nipple = nipple after: { $nipple }
note-nipple-unseen = nipple not looked at after
# Where feeds differ. $signs as the sentences below.
note-signs-feed = Feed { $number }: { $signs }
note-signs-all = All signs of position and attachment seen.
note-signs-none = Signs of position and attachment not looked at.
note-signs-missing = Signs not seen: { $signs }.
note-signs-unclear = Signs unclear: { $signs }.
note-signs-unlooked =
    { $count ->
        [one] 1 sign not looked at.
       *[other] { $count } signs not looked at.
    }
# $scores as "6, 3, 0", in the order in which they were told.
note-pain = Pain, 0 to 10, in order: { $scores }.
note-pain-cannot-say = cannot say
note-pain-not-asked = Pain not asked.
note-plan = Plan: { $items }.
note-own-words =
    { $count ->
        [one] 1 plan item in own words is in the record.
       *[other] { $count } plan items in own words are in the record.
    }
note-next-look = Next look: { $due }.
note-shortened =
    { $count ->
        [one] Shortened: 1 part left out, see the record.
       *[other] Shortened: { $count } parts left out, see the record.
    }
# Always the end of the note. $id eight letters and digits.
note-end = Describes, does not diagnose. Visit { $id }

## The plain page.

report-title = Watched breastfeed: record of a visit
report-pair = Bed: { $bed }, { $initials }
report-visit = Visit { $id }, began { $began }, by { $specialist }
report-amends = Amended: this record replaces visit { $id }.
report-signed = Signed by { $by }, { $when }
report-not-signed = Not signed.
report-no-finding = No rule asked for anything.
report-source = Source: { $source }
report-tries = Usually tried: { $tries }
report-call = Call: { $whom }
report-acknowledged = Acknowledged by { $by }, { $when }
report-not-acknowledged = Not acknowledged yet.
report-unjudged = Could not be judged
report-unjudged-rule = * { $rule }: could not be judged, missing: { $missing }
report-about = About the pair
report-born = Born
report-gestation = Gestation at birth
report-weeks-days = { $weeks } weeks { $days } days
report-birth-weight = Birth weight
report-way-of-birth = Way of birth
report-risk-notes = May need more help because of
report-reasons = Called because of
report-last-day = The last 24 hours, as told
report-last-day-not-asked = Not asked.
report-feeds = Feeds at the breast
report-wet = Wet nappies
report-dirty = Dirty nappies
report-stool = Latest stool
report-urates = Pink or brick-red staining
report-meconium = First stool ever passed (meconium)
report-dark-urine = Dark urine that stains the nappy
report-hours-since-wet = Since the last wet nappy
report-expressed = Expressed milk given
report-supplement = Formula or donor milk given
report-sleepy = Needs waking for most feeds
report-jaundice = Yellow skin
report-temperature = Temperature
report-baby-danger = Danger signs of the baby
report-mother-danger = Danger signs of the mother
report-asked-none = asked for, none
report-unknown = not known
report-not-asked = not asked
report-not-looked = not looked at
report-yes = yes
report-no = no
report-weight = Weight and output
report-weight-none = Not weighed in this visit.
# $moment as "before a feed", $clothes and $step messages of this file.
report-weighed = { $when }: { $grams } g, { $moment }, { $clothes }, { $step }
report-told-later = taken earlier and told at the visit
report-clothed = in clothes or nappy
report-unclothed = unclothed
report-step = scale step { $grams } g
report-step-unknown = scale step not known
# A 95 % interval or the range of what is usual, behind its number.
report-interval = ({ $low } to { $high })
report-range = { $low } to { $high }
report-nappy = { $when }: nappy, { $what }
report-nappy-wet = wet
report-nappy-heavy = wet and heavy
report-nappy-not-wet = not wet
report-before = Before the feed
report-breast-before = { $side }: breast { $breast }, nipple { $nipple }
report-feed = Feed { $number }, { $side }
report-holds = Hold
report-feed-ended = { $began } to { $ended }, { $clock } long, ended by: { $by }
report-feed-running = Began { $began }, not ended.
report-no-rhythm = The rhythm was not computed.
# $watched and $total as "12:40", minutes and seconds.
report-counts = Watched { $watched } of { $total }: { $sucks } sucks, { $swallows } swallows counted
report-first-flow =
    { $count ->
        [one] Milk flowing first at { $clock }, one stretch
       *[other] Milk flowing first at { $clock }, { $count } stretches
    }
report-no-flow = No milk flow was seen in the watched time.
report-phases = Time in each phase
report-whole-feed = whole feed
# $rate and $ratio numbers with their intervals.
report-rates = { $phase }: sucks per minute { $rate }, sucks per swallow { $ratio }
report-too-few = too few to say
report-runs =
    { $runs ->
        [one] One run of { $sucks } sucks, { $seconds } s
       *[other] { $runs } runs, half of them with { $sucks } sucks or more; median { $seconds } s
    }
report-rests =
    { $rests ->
        [one] One rest, { $seconds } s
       *[other] { $rests } rests; median { $seconds } s
    }
report-doubts = Trust these numbers less because of
report-pain = Pain, 0 to 10
report-tried = Tried
report-nipple-after = Nipple after
report-breast-after = Breast after
report-baby-after = Baby after
report-unresolved =
    { $count ->
        [one] One touch could not be told apart by the screen.
       *[other] { $count } touches could not be told apart by the screen.
    }
report-signs = Signs of position and attachment
report-signs-missing = Not seen
report-signs-unclear = Unclear
report-signs-seen = Seen
report-signs-unlooked = Not looked at
report-notes = Notes
report-plan = Plan
report-plan-none = Nothing was agreed.
report-next-look = Next look
report-next-look-none = not set
report-odd =
    { $count ->
        [one] One entry of the journal does not fit where it stands.
       *[other] { $count } entries of the journal do not fit where they stand.
    }
report-policy = Judged by ward policy { $name }, version { $version }, { $hash }
report-versions = Feedside { $app }; rules { $rhythm }, { $growth }, { $findings }
report-caution = This page describes what was seen and computed. It does not diagnose. Local policy and the clinician decide.
report-hours =
    { $count ->
        [one] 1 hour
       *[other] { $count } hours
    }
report-days =
    { $count ->
        [one] 1 day
       *[other] { $count } days
    }
report-unit-sd = SD
report-unit-day = days
report-unit-gram-per-day = g a day
report-at-least = at least { $low }
report-under = under { $high }
report-no-figures = No figures were computed.
report-figures-missing = Some figures are absent, missing: { $missing }

## Figures of weight and output, on the plain page: label before a number.

figure-age = Age now
figure-weight = Weight that counts
figure-weight-age = Age when weighed
figure-weight-change-grams = Change from birth weight
figure-weight-change = Change from birth weight in per cent
figure-weight-clothed-since = Later weight in clothes
figure-median-change = Published median change at about that age
figure-median-change-age = That median is for the age of
figure-sds-line = Line of -2.5 SDS for change at that age
figure-who-z = WHO z for weight at that age
figure-who-centile = WHO centile
figure-back-at-birth-weight = Back at birth weight at the age of
figure-gain-per-day = Gain to the last weight
figure-test-weighing = Intake by test weighing
figure-wet-expected = Wet nappies expected on this day
figure-dirty-expected = Dirty nappies expected on this day
figure-usual-feed = Usual volume of one feed at this age, not a prescription
figure-weight-asked = To be asked about, weight of
