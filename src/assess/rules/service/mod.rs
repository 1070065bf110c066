//! The `service/` rules: power, gas, water and air, as the maker's sheet asks and as they are there.

pub mod circuit;
pub mod drain;
pub mod duct;
pub mod exhaust;
pub mod gas;
pub mod make_up_air;
pub mod receptacle;
pub mod receptacles;
pub mod water;
pub mod zone;

use crate::assess::Context;
use crate::book::{Needs, Service, Services, Slot};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::source::Spanned;
use crate::vocabulary::supply::Worded;

/// A service that a thing needs, and what is at its opening.
struct ServiceNeed<'a, T> {
    fitted: Placement<'a>,
    /// In the sheet's words.
    needs: &'a Spanned<Worded<T>>,
    /// In the book's words; none when nothing is told.
    there: Option<&'a Spanned<Worded<T>>>,
}

/// Every thing at its opening that needs a service.
fn asked<'a, T: 'a>(
    context: &Context<'a>,
    needs: fn(&Needs) -> &Slot<Worded<T>>,
    there: fn(&Services) -> &Slot<Worded<T>>,
) -> impl Iterator<Item = ServiceNeed<'a, T>> {
    context.site.fitted().filter_map(move |fitted| {
        let needs = needs(&fitted.option.fit.get()?.needs).spanned()?;
        Some(ServiceNeed { needs, there: there(&fitted.opening.service).spanned(), fitted })
    })
}

impl<T> ServiceNeed<'_, T> {
    /// A finding at what is there, pointing at what is needed too.
    fn finding(&self, severity: Severity, message: impl Into<Phrase>) -> Remark {
        let at = self.there.map_or(self.fitted.opening.span, |there| there.span);
        self.fitted.finding(severity, at, message).also(self.needs.span, "needs this")
    }

    /// The finding that nothing is told of the service.
    fn untold(&self, service: Service) -> Remark {
        let name = &self.fitted.selection.name.value;
        let message = phrase!(
            "`{name}` needs {service} ({}), and nothing is told of it at the opening `{}`",
            name,
            service,
            self.needs.words,
            self.fitted.opening.name.value
        );
        self.finding(Severity::Query, message)
            .remedy(phrase!("find out what is there and add it at the opening: `service: {{{service}: …}}`", service))
    }
}
