//! The desk's program: arguments in, exit code out. The clock and the random bytes are read here.

use std::process::ExitCode;

use feedside::desk::command::{Keyboard, Patient, World, run};

fn main() -> ExitCode {
    let mut world = World {
        input: &mut Patient::new(std::io::stdin()),
        keyboard: &Keyboard::to_scanner,
        out: &mut std::io::stdout().lock(),
        err: &mut std::io::stderr().lock(),
        now: &|| chrono::Local::now().fixed_offset(),
        random: &|| {
            let mut bytes = [0; 32];
            getrandom::fill(&mut bytes).ok().map(|()| bytes)
        },
        variable: &|name| std::env::var_os(name),
        #[cfg(feature = "window")]
        window: Some(&feedside::clerk::start::run),
        #[cfg(not(feature = "window"))]
        window: None,
    };
    ExitCode::from(run(std::env::args_os(), &mut world))
}
