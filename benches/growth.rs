//! Benches of the room `growth`.

fn main() {
    divan::main();
}
