//! A list that a screen shows, changed as little as possible, so that only what changed is drawn.

use std::rc::Rc;

use slint::{Model, ModelRc, VecModel};

/// A list kept from one render to the next.
pub struct Kept<T: 'static>(Rc<VecModel<T>>);

impl<T: Clone + PartialEq + 'static> Default for Kept<T> {
    fn default() -> Self {
        Self(Rc::new(VecModel::default()))
    }
}

impl<T: Clone + PartialEq + 'static> Kept<T> {
    /// The list as the screen takes it.
    pub fn model(&self) -> ModelRc<T> {
        ModelRc::from(Rc::clone(&self.0))
    }

    /// Puts new rows: drops from the front what moved out, changes what differs, adds the rest.
    pub fn put(&self, rows: Vec<T>) {
        let kept = &self.0;
        if let Some(first) = rows.first() {
            let gone = (0..kept.row_count())
                .find(|row| kept.row_data(*row).as_ref() == Some(first))
                .unwrap_or(0);
            for _ in 0..gone {
                kept.remove(0);
            }
        }
        while rows.len() < kept.row_count() {
            kept.remove(kept.row_count() - 1);
        }
        for (index, row) in rows.into_iter().enumerate() {
            match kept.row_data(index) {
                Some(old) if old == row => {}
                Some(_) => kept.set_row_data(index, row),
                None => kept.push(row),
            }
        }
    }
}

/// A list made anew, for screens that change seldom.
pub fn list<T: Clone + 'static>(rows: impl IntoIterator<Item = T>) -> ModelRc<T> {
    ModelRc::from(Rc::new(rows.into_iter().collect::<VecModel<T>>()))
}
