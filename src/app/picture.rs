//! The real screens drawn with no display: a window that exists only as pixels.
//!
//! Used by the rehearsal. Once in a process, before any other window.

use std::cell::Cell;
use std::rc::Rc;
use std::time::{Duration, Instant};

use slint::platform::software_renderer::{MinimalSoftwareWindow, RepaintBufferType};
use slint::platform::{Platform, PlatformError, WindowAdapter};
use slint::{PhysicalSize, Rgb8Pixel, SharedPixelBuffer};

struct Drawn {
    window: Rc<MinimalSoftwareWindow>,
    started: Instant,
    ahead: Rc<Cell<Duration>>,
}

impl Platform for Drawn {
    fn create_window_adapter(&self) -> Result<Rc<dyn WindowAdapter>, PlatformError> {
        Ok(self.window.clone())
    }

    fn duration_since_start(&self) -> Duration {
        self.started.elapsed() + self.ahead.get()
    }
}

/// A window of pixels.
pub struct Canvas {
    window: Rc<MinimalSoftwareWindow>,
    ahead: Rc<Cell<Duration>>,
}

impl Canvas {
    /// Takes the place of the window system.
    ///
    /// # Errors
    /// There is one already.
    pub fn set_up() -> Result<Self, PlatformError> {
        let window = MinimalSoftwareWindow::new(RepaintBufferType::NewBuffer);
        let ahead = Rc::default();
        slint::platform::set_platform(Box::new(Drawn {
            window: window.clone(),
            started: Instant::now(),
            ahead: Rc::clone(&ahead),
        }))
        .map_err(|error| PlatformError::Other(error.to_string()))?;
        Ok(Self { window, ahead })
    }

    /// Makes the window so many pixels large.
    pub fn resize(&self, width: u32, height: u32) {
        self.window.set_size(PhysicalSize::new(width, height));
    }

    /// Puts the clock of what moves ahead, so that no one has to wait for it.
    pub fn pass(&self, time: Duration) {
        self.ahead.set(self.ahead.get() + time);
        slint::platform::update_timers_and_animations();
    }

    /// Draws what the window shows now.
    pub fn draw(&self) -> image::RgbImage {
        slint::platform::update_timers_and_animations();
        let size = self.window.size();
        let mut pixels = SharedPixelBuffer::<Rgb8Pixel>::new(size.width, size.height);
        // Twice: what is laid out for the first time settles in the second.
        for _ in 0..2 {
            self.window.request_redraw();
            self.window.draw_if_needed(|renderer| {
                renderer.render(pixels.make_mut_slice(), size.width as usize);
            });
        }
        image::RgbImage::from_raw(size.width, size.height, pixels.as_bytes().to_vec())
            .unwrap_or_else(|| image::RgbImage::new(size.width, size.height))
    }
}
