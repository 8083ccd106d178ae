//! The files of `translations/`, embedded, handed to the loader one language at a time.

use std::borrow::Cow;
use std::sync::LazyLock;

use i18n_embed::fluent::FluentLanguageLoader;
use i18n_embed::{I18nAssets, LanguageLoader};
use rust_embed::RustEmbed;

use super::Lang;

#[derive(RustEmbed)]
#[folder = "translations/"]
struct Files;

/// All areas of a language as one resource, so that a message may name one of another area.
struct Areas;

impl I18nAssets for Areas {
    fn get_files(&self, file_path: &str) -> Vec<Cow<'_, [u8]>> {
        let folder = file_path.split_inclusive('/').next().unwrap_or_default();
        let mut names: Vec<_> = Files::iter()
            .filter(|name| name.starts_with(folder) && name.ends_with(".ftl"))
            .collect();
        names.sort();
        let mut all = Vec::new();
        for file in names.iter().filter_map(|name| Files::get(name)) {
            all.extend_from_slice(&file.data);
            all.push(b'\n');
        }
        if all.is_empty() {
            Vec::new()
        } else {
            vec![Cow::Owned(all)]
        }
    }

    fn filenames_iter(&self) -> Box<dyn Iterator<Item = String> + '_> {
        Box::new(Files::iter().map(Cow::into_owned))
    }
}

/// Every language, read once in the life of the program.
pub(super) static LOADER: LazyLock<FluentLanguageLoader> = LazyLock::new(|| {
    let loader = FluentLanguageLoader::new("feedside", Lang::En.id());
    let ids: Vec<_> = Lang::ALL.iter().map(|lang| lang.id()).collect();
    loader
        .load_languages(&Areas, &ids)
        .expect("the translations are embedded, and the build script has parsed them");
    // The marks around arguments are for text that runs both ways; elsewhere they only get into
    // searches, files and narrow fonts.
    loader.with_bundles_mut(|bundle| {
        let right_to_left = bundle.locales.first().is_some_and(|id| {
            Lang::from_tag(id.language.as_str()).is_some_and(Lang::is_right_to_left)
        });
        bundle.set_use_isolating(right_to_left);
    });
    loader
});
