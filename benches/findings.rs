//! Benches of the room `findings`.

fn main() {
    divan::main();
}
