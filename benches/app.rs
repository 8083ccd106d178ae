//! Benches of the room `app`.

fn main() {
    divan::main();
}
