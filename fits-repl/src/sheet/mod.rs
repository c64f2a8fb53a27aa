//! The sheet to hang by the lathe: one HTML file, a page a part that is cut, one
//! for all that is not, and a page for putting the parts together.
//!
//! Its limits are the job's own, its tools and passes those of single queries
//! (`asked`); it adds none.

pub(crate) mod asked;
mod feature;
mod html;
mod joints;
mod part;
mod picture;

use fits_core::job::whole::Job;

use crate::session::Session;

/// The whole document.
pub fn page(job: &Job, session: &mut Session) -> String {
    let title = job.title.as_deref().unwrap_or("Job");
    let mut pages = Vec::new();
    let mut shown = Vec::new();
    for at in (0..job.parts.len()).filter(|at| part::is_cut(job, *at)) {
        pages.extend(part::pages(job, at, session, &mut shown));
    }
    pages.extend(part::uncut(job, session));
    pages.extend(joints::pages(job, session, &shown));
    html::document(title, &pages)
}
