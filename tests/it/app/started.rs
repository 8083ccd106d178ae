//! What a terminal is told when the app does not start.

use feedside::app::start::StartError;
use slint::PlatformError;

#[test]
fn without_a_display_the_rehearsal_is_named() {
    let told = StartError::NoDisplay.told();
    assert!(told.starts_with("There is no display"), "{told}");
    assert!(told.contains("feedside rehearse --out"), "{told}");
}

#[test]
fn a_window_that_cannot_be_opened_on_a_display_is_told_with_its_cause() {
    let cause = PlatformError::Other("no renderer took\n  the surface.".to_owned());
    let told = StartError::Window(cause).told();
    assert!(!told.contains("no display"), "{told}");
    assert!(
        told.contains("on the display: no renderer took the surface. "),
        "{told}"
    );
    assert_eq!(told.lines().count(), 1);
}
