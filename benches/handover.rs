//! Benches of the room `handover`.

fn main() {
    divan::main();
}
