//! The reader's answers as their own: save to a file, load from one, start over.

use super::link::GoTo;
use crate::core::message::{Arg, Message};
use crate::job::file::{CaseFile, parse_case, to_json};
use crate::text::JOBS;
use crate::ui::browser::download;
use crate::ui::model::{Notice, Remedy};
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use leptos::html;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_split::SplitLoaderError;

/// Save, load, start over.
#[component]
pub fn YourAnswers() -> impl IntoView {
    let page = page();
    view! {
        <section class="kept" aria-labelledby="kept">
            <h2 id="kept">{page.key("page-kept")}</h2>
            <p class="quiet">{page.key("page-kept-about")}</p>
            <div class="ways">
                <button type="button" class="button" data-test="save-file" on:click=move |_| with_files(page, save(page))>
                    {page.key("page-kept-save")}
                </button>
                <LoadButton/>
                <button type="button" class="button" data-test="start-over" on:click=move |_| page.start_over()>
                    {page.key("page-kept-clear")}
                </button>
            </div>
            <p><GoTo route=Route::Jobs test="jobs-link">{page.key("jobs-quiet-link")}</GoTo></p>
        </section>
    }
}

/// Opens the browser's file chooser. The field itself is out of sight; the button stands for it.
#[component]
fn LoadButton() -> impl IntoView {
    let page = page();
    let field = NodeRef::<html::Input>::new();
    let choose = move |_| {
        if let Some(field) = field.get_untracked() {
            field.click();
        }
    };
    view! {
        <input
            node_ref=field
            type="file"
            hidden
            accept=".json,application/json"
            data-test="load-file"
            aria-label=page.key("page-kept-load")
            on:change=move |_| load(page, field)
        />
        <button type="button" class="button" data-test="load" on:click=choose>
            {page.key("page-kept-load")}
        </button>
    }
}

/// Runs what reads or writes a file; the code for that is fetched when first needed.
fn with_files(page: Page, work: impl Future<Output = Result<(), SplitLoaderError>> + 'static) {
    spawn_local(async move {
        if work.await.is_err() {
            page.tell(Notice { code: "file", says: Message::new("page-part-missing"), remedy: None });
        }
    });
}

#[leptos::wasm_split::wasm_split(jobs, wasm_split_path = leptos::wasm_split, fallible)]
fn save(page: Page) -> Result<(), SplitLoaderError> {
    let file = CaseFile { answers: page.answers.get_untracked(), ..CaseFile::default() };
    download::offer("tankful-answers.json", &format!("{:#}", to_json(&file)));
    Ok(())
}

fn load(page: Page, field: NodeRef<html::Input>) {
    let Some(field) = field.get_untracked() else { return };
    let Some(file) = field.files().and_then(|files| files.get(0)) else { return };
    with_files(page, async move {
        let text = download::read(file, download::LARGEST).await;
        // Emptied, so that the same file can be chosen again.
        field.set_value("");
        take(page, text).await
    });
}

/// Takes the answers of a file in place of those there are, which can be put back; a file with faults
/// changes nothing.
#[leptos::wasm_split::wasm_split(jobs, wasm_split_path = leptos::wasm_split, fallible)]
fn take(page: Page, text: Option<String>) -> Result<(), SplitLoaderError> {
    // A fault names its question.
    page.learn(&JOBS);
    let read = text.as_deref().map(parse_case);
    let (says, remedy) = match read {
        Some(Ok(file)) => {
            let before = page.answers.get_untracked();
            let count = file.answers.len() as i64;
            page.replace(file.answers);
            (Message::new("page-notice-file-read").with("count", count), Some(Remedy::PutBack(before)))
        }
        Some(Err(faults)) => match faults.first() {
            Some(first) => {
                let why =
                    Arg::Verbatim(format!("{} {}", first.field, page.words_now().say(&first.message())));
                (Message::new("page-notice-file-fault").with("why", why), None)
            }
            None => (Message::new("page-notice-file-bad"), None),
        },
        None => (Message::new("page-notice-file-bad"), None),
    };
    page.tell(Notice { code: "file", says, remedy });
    Ok(())
}
