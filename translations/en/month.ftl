### What the ward's feeds looked like over the last days.

## The screen. $days is whole.

month-title = The last { $days } days
# At the foot. Two sentences.
month-caution = These are counts of what was written down on this tablet, without the pairs that have left it. Few visits say little, and no count is a measure of anybody's work.
month-none = No visit in these days.
# While visits are still being gone through.
month-working = { $left ->
    [one] Still counting: { $left } visit
   *[other] Still counting: { $left } visits
}

## How a figure is written. In the right of two columns, so short.

month-hours = { $hours } h { $minutes } min
month-share = { $of } of { $all }
month-share-percent = { $of } of { $all } ({ $percent })
month-nothing = nothing to count
month-none-noted = none written down
month-times = { $count ->
    [one] { $count } time
   *[other] { $count } times
}
month-spread = { $median } ({ $low } to { $high })
month-spread-quiet = { $count } feeds, half of them between these
month-too-few = too few to tell
month-too-few-quiet = { $count ->
    [one] { $count } feed
   *[other] { $count } feeds
}

## Visits. Labels: at most about 30 characters. Quiet lines: what a share is out of.

month-visits-heading = Visits
month-visits = Visits
month-pairs = Pairs
month-feeds = Feeds
month-watched = Time watched
month-review-quiet = of the visits that were judged
month-signed = Signed
month-signed-quiet = of all visits
month-receipt = With a receipt
month-waiting = Waiting for a receipt
month-receipt-quiet = of the signed visits

## Milk.

month-milk-heading = Milk
month-flow = Milk flowing seen
month-flow-quiet = of feeds watched for at least { $minutes } minutes
month-first-flow = First flow after
month-flow-time = Milk flowing in a feed
month-sucking = Share of time sucking

## Pain. $score is 4.

month-pain-heading = Pain
month-pain-told = Pain told
month-pain-told-quiet = of all feeds
month-pain-first = At first { $score } or more
month-pain-last = At last { $score } or more
month-pain-quiet = of feeds in which a score was told then

## Signs, each by its own name.

month-signs-heading = Signs not seen at the end
month-signs-quiet = of visits in which it was looked at
month-signs-all = Signs

## Adjustments, each by its own name.

month-tried-heading = Tried most often
month-tried-all = Adjustments tried

## The nipple after a feed.

month-nipple-heading = Nipple after the feed
month-nipple-misshapen = Shape not round
month-nipple-blanched = White tip
month-nipple-damaged = Wound
month-nipple-quiet = of feeds after which it was told
