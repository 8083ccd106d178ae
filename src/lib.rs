//! Feedside: the tool of the infant-feeding specialist at the bedside.
//!
//! The rooms in reading order; imports go only downwards, and a test proves it. Each room's own
//! page says what it is for and what it deliberately does not know.

pub mod record;

pub mod growth;
pub mod practice;
pub mod rhythm;
pub mod words;

pub mod findings;
pub mod handover;
#[cfg(feature = "store")]
pub mod store;

pub mod report;

pub mod fault;

#[cfg(feature = "app")]
pub mod app;
#[cfg(feature = "desk")]
pub mod desk;

#[cfg(feature = "window")]
pub mod clerk;

#[cfg(all(feature = "app", feature = "desk"))]
pub mod rehearse;

/// Android's way in. The data lie in the app's own folder, which no other app can read; no picture of
/// the screen can be taken, nor does one stand among the recent apps.
#[cfg(all(target_os = "android", feature = "app"))]
#[allow(unsafe_code)] // The system looks for this name.
#[unsafe(no_mangle)]
fn android_main(app: slint::android::AndroidApp) {
    use slint::android::android_activity::WindowManagerFlags;

    app.set_window_flags(WindowManagerFlags::SECURE, WindowManagerFlags::empty());
    let Some(data) = app.internal_data_path() else {
        return;
    };
    if slint::android::init(app).is_ok() {
        // There is nobody to tell: what goes wrong later is told on the screen.
        let _ = app::start::run(&data, false);
    }
}
