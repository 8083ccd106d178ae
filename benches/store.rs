//! Benches of the room `store`.

fn main() {
    divan::main();
}
