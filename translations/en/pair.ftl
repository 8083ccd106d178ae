## The Pair screen: the story so far, and the form.

pair-facts = This pair
pair-weights = Weight
pair-output = Last 24 hours, last asked
pair-visits = Visits
pair-no-visits = None yet.
pair-edit = Change
pair-save = Save
pair-begin = Begin a visit
pair-go-on = Go on with the visit
pair-new = New pair
pair-birth = Born
pair-gestation = Gestation
pair-birth-weight = Birth weight
pair-way = Way of birth
pair-sex = Baby
pair-reasons = Why called
pair-risks = To keep in mind
# An age in whole days, 0 through the first 24 hours; a day of life is counted from 1.
pair-days-hours =
    { $days ->
        [one] { $days } day, { $hours } h
       *[other] { $days } days, { $hours } h
    }
pair-weeks-days = { $weeks } weeks + { $days }
pair-grams = { $grams } g
pair-centile = WHO centile { $centile }, z { $z }
pair-no-weight = No weight yet
pair-expected = Expected on day { $day } of life: { $wet } wet or more, { $dirty } dirty or more
pair-visit = { $date }, { $by }
pair-visit-open = open
pair-visit-signed = signed, waiting for a receipt
pair-visit-signed-only = signed
pair-visit-replaced = replaced by a later version
pair-visit-received = handed over, receipt { $receipt }
pair-visit-amends = amends an earlier version
pair-form-bed = Bay and bed
pair-form-initials = Initials
pair-form-birth = Born (date and time)
# What a date looks like; keep the figures.
pair-form-birth-example = 2026-11-22 04:30
pair-form-weight = Birth weight in g
pair-form-gestation = Gestation, weeks+days
pair-form-sex = Baby
pair-form-way = Way of birth
pair-form-reasons = Why the specialist was called
pair-form-risks = To keep in mind
pair-trouble-bed = Enter the bed.
pair-trouble-initials = Enter the initials.
pair-trouble-birth = Enter the birth as 2026-11-22 04:30, not in the future.
pair-trouble-weight = The birth weight is a whole number of grams from 300 to 7000. Leave it empty if it is not known.
pair-trouble-gestation = Enter the gestation as 39+4, from 22+0 to 44+6. Leave it empty if it is not known.
pair-drawn = Chart
pair-table = Figures
pair-no-chart = Without a birth weight there is no change to draw. The figures are in the table.
pair-chart-weights = Weighed: change from birth weight by day of age. Hollow: in clothes
# The source knows these two ways of birth and no further ones.
pair-chart-medians-vaginal = Published median loss, vaginal birth (Flaherman 2015)
pair-chart-medians-caesarean = Published median loss, caesarean birth (Flaherman 2015)
pair-chart-line = −2.5 SDS of weight change (van Dommelen 2007): below it, medical review
pair-chart-least = Least expected at that age (UK checklists)
pair-chart-day =
    { $day ->
        [one] { $day } day
       *[other] { $day } days
    }
# { $wet }, { $dirty }, { $feeds } counts, or a dash where it was not asked.
pair-day = { $wet } wet, { $dirty } dirty, { $feeds } feeds
pair-median = Published median loss
pair-median-at-vaginal = vaginal birth, at { $hours } h
pair-median-at-caesarean = caesarean birth, at { $hours } h
pair-line =
    { $day ->
        [one] −2.5 SDS line at { $day } day
       *[other] −2.5 SDS line at { $day } days
    }
pair-line-below = The weight lies below it.
pair-line-above = The weight does not lie below it.
pair-gain = Gain a day
pair-grams-a-day = { $grams } g a day
pair-between = { $low } to { $high }
pair-back = Back at birth weight
pair-test-weighing = Last test weighing
pair-millilitres = { $ml } ml
pair-below-resolution = The scale cannot tell it from none.
pair-asked = Is { $grams } right? Weighed { $time }
pair-it-is-right = It is right
pair-correct-it = Correct it
pair-twin = Another baby of this mother
pair-language = Mother's language
pair-babies = Babies born together
pair-shares-mother = shares a mother with another pair
pair-mother-number = Mother's number on the ward
pair-baby-number = Baby's number on the ward
pair-form-language = Mother's language
pair-trouble-number = A ward number has at most 40 characters.

## Languages that a mother may speak.

language-en = English
language-de = German
language-ar = Arabic
language-fa = Persian
language-fr = French
language-pl = Polish
language-ro = Romanian
language-ru = Russian
language-so = Somali
language-es = Spanish
language-tr = Turkish
language-uk = Ukrainian
