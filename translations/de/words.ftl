### Formen von Datum und Uhrzeit, überall gebraucht.

## Kurze Monatsnamen, innerhalb eines Datums.

month-1 = Jan.
month-2 = Feb.
month-3 = März
month-4 = Apr.
month-5 = Mai
month-6 = Juni
month-7 = Juli
month-8 = Aug.
month-9 = Sept.
month-10 = Okt.
month-11 = Nov.
month-12 = Dez.

## $day "9", $month einer der Namen oben, $year "2026", $time "03:04".

date = { $day }. { $month } { $year }
date-time = { $day }. { $month } { $year }, { $time }
# Wo das Jahr klar ist.
day-time = { $day }. { $month }, { $time }
