//! Notices: what the reader must know beside the page, each with what can be done about it.

use crate::ui::browser::{download, offline};
use crate::ui::model::{Notice, Remedy};
use crate::ui::state::page;
use leptos::prelude::*;

/// All notices, announced as they come.
#[component]
pub fn Notices() -> impl IntoView {
    let page = page();
    view! {
        <div class="notices" role="status" data-test="notices">
            {move || {
                page.notices.get().into_iter().map(|notice| view! { <OneNotice notice/> }).collect_view()
            }}
        </div>
    }
}

#[component]
fn OneNotice(notice: Notice) -> impl IntoView {
    let page = page();
    let Notice { code, says, remedy } = notice;
    let help = remedy.map(|remedy| {
        let (words, test) = match &remedy {
            Remedy::Download(_) => ("page-notice-download", "notice-download"),
            Remedy::PutJobBack(_) => ("jobs-notice-put-back", "notice-put-back"),
            Remedy::PutBack(_) => ("page-notice-put-back", "notice-put-back"),
            Remedy::Renew => ("offline-notice-use", "notice-use"),
        };
        let act = move |_| match remedy.clone() {
            Remedy::Download(text) => download::offer("tankful-set-aside.json", &text),
            Remedy::PutBack(answers) => {
                page.replace(answers);
                page.dismiss(code);
            }
            Remedy::PutJobBack(job) => page.put_back(*job),
            Remedy::Renew => offline::renew(page),
        };
        view! { <button type="button" class="button" data-test=test on:click=act>{page.key(words)}</button> }
    });
    view! {
        <div class="notice" data-test=format!("notice-{code}")>
            <p>{move || page.say(&says)}</p>
            <div class="ways">
                {help}
                <button type="button" class="button" data-test="notice-dismiss" on:click=move |_| page.dismiss(code)>
                    {page.key("page-notice-dismiss")}
                </button>
            </div>
        </div>
    }
}
