//! Benches of the room `desk`.

fn main() {
    divan::main();
}
