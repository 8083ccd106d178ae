### Forms of dates, used everywhere.

## Short names of the months, inside a date.

month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = May
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Oct
month-11 = Nov
month-12 = Dec

## $day "9", $month one of the names above, $year "2026", $time "03:04".

date = { $day } { $month } { $year }
date-time = { $day } { $month } { $year }, { $time }
# Where the year is plain.
day-time = { $day } { $month }, { $time }
