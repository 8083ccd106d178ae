//! The last few of what was pushed, in room that does not grow. Knows nothing of taps.

/// The last `N` of what was pushed.
#[derive(Debug, Clone)]
pub(super) struct Ring<T, const N: usize> {
    items: [Option<T>; N],
    next: usize,
}

impl<T: Copy, const N: usize> Ring<T, N> {
    pub(super) const fn new() -> Self {
        Self {
            items: [None; N],
            next: 0,
        }
    }

    pub(super) fn push(&mut self, item: T) {
        self.items[self.next] = Some(item);
        self.next = (self.next + 1) % N;
    }

    pub(super) fn last_mut(&mut self) -> Option<&mut T> {
        self.items[(self.next + N - 1) % N].as_mut()
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = T> {
        self.items.iter().flatten().copied()
    }
}
