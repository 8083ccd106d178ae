//! The quartiles are those of an independent program: `quartiles-by-numpy.csv` says how it was made.

use feedside::report::month::Quartiles;

const BY_NUMPY: &str = include_str!("../../../data/report/quartiles-by-numpy.csv");

#[test]
fn quartiles_are_those_of_numpy() {
    let rows = BY_NUMPY.lines().filter(|it| !it.starts_with(['#', 'l']));
    let mut checked = 0;
    for row in rows {
        let cells: Vec<&str> = row.split(',').collect();
        let number = |text: &str| text.parse::<f64>().unwrap();
        let values: Vec<f64> = cells[3].split(' ').map(number).collect();
        let it = Quartiles::of(&values).unwrap();
        for (found, expected) in [it.low, it.median, it.high].into_iter().zip(&cells) {
            assert!((found - number(expected)).abs() < 1e-6, "{found} in {row}");
        }
        checked += 1;
    }
    assert_eq!(checked, 17);
}

#[test]
fn nothing_has_no_quartiles() {
    assert_eq!(Quartiles::of(&[]), None);
}
