//! Agreement on categories beyond chance: Cohen's kappa. Does not know what the categories mean.

/// Agreement of two observers who put the same things into categories.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kappa {
    /// Share of things put alike, 0 to 1.
    pub alike: f64,
    /// Share that would be alike by chance, 0 to 1.
    pub by_chance: f64,
    /// Cohen's kappa, -1 to 1; `None` where everything lies in one category for both, so that
    /// chance alone explains the agreement.
    pub kappa: Option<f64>,
}

/// Cohen's kappa (Cohen 1960, Educ Psychol Meas 20:37, unweighted). `pairs` holds what the first
/// and the second observer said of each thing. `None` without any.
pub fn kappa<T: Copy + PartialEq>(pairs: &[(T, T)]) -> Option<Kappa> {
    if pairs.is_empty() {
        return None;
    }
    let total = pairs.len() as f64;
    let mut categories: Vec<T> = Vec::new();
    for category in pairs.iter().flat_map(|(first, second)| [*first, *second]) {
        if !categories.contains(&category) {
            categories.push(category);
        }
    }
    let share = |holds: &dyn Fn(&(T, T)) -> bool| {
        pairs.iter().filter(|pair| holds(pair)).count() as f64 / total
    };
    let alike = share(&|(first, second)| first == second);
    let by_chance = categories
        .iter()
        .map(|it| share(&|(first, _)| first == it) * share(&|(_, second)| second == it))
        .sum::<f64>();
    Some(Kappa {
        alike,
        by_chance,
        kappa: (1 < categories.len()).then(|| (alike - by_chance) / (1.0 - by_chance)),
    })
}
