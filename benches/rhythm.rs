//! Benches of the room `rhythm`.

fn main() {
    divan::main();
}
