//! The `service/` rules: power, gas, water and air, as the maker's sheet asks and as they are there.

pub mod boxes;
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
use crate::book::{Needs, Opening, Service, Services, Slot};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::source::Spanned;
use crate::units::Wrote;
use crate::vocabulary::supply::{Worded, is_none};

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
    context.site.connected().filter_map(move |fitted| {
        let needs = needs(&fitted.option.fit.get()?.needs).spanned().filter(|needs| !is_none(&needs.words))?;
        let there = there(&fitted.opening.service);
        // What could not be read has been told.
        (!there.is_faulty()).then(|| ServiceNeed { needs, there: there.spanned(), fitted })
    })
}

impl<T> ServiceNeed<'_, T> {
    /// A finding at what is there, pointing at what is needed too.
    fn finding(&self, severity: Severity, message: impl Into<Phrase>) -> Remark {
        let at = self.there.map_or(self.fitted.opening.span, |there| there.span);
        self.fitted.finding(severity, at, message).also(self.needs.span, "needs this")
    }

    /// What is wrong where nothing is told of a service, or it is told not to be there; where it is told to come
    /// out at all, that is told.
    fn absent(&self, service: Service) -> Option<Remark> {
        let name = &self.fitted.selection.name.value;
        let (needs, opening) = (Wrote(&self.needs.words), &self.fitted.opening.name.value);
        match self.there {
            Some(there) if is_none(&there.words) => {
                let message = phrase!(
                    "`{name}` needs {service} ({needs}), and there is none at the opening `{opening}`",
                    name,
                    service,
                    needs,
                    opening
                );
                let remedy =
                    "have a licensed trade bring it there before the wall is closed, or choose what does without";
                Some(self.finding(Severity::Stop, message).remedy(remedy))
            }
            Some(_) => None,
            None if comes_out(self.fitted.opening, service) => self.only_a_point(service),
            None => {
                let message = phrase!(
                    "`{name}` needs {service} ({needs}), and nothing is told of it at the opening `{opening}`",
                    name,
                    service,
                    needs,
                    opening
                );
                let remedy =
                    phrase!("find out what is there and add it at the opening: `service: {{{service}: …}}`", service);
                Some(self.finding(Severity::Query, message).remedy(remedy))
            }
        }
    }
}

impl<T> ServiceNeed<'_, T> {
    /// A service of which a point alone is told, and what it carries matters: its circuit, its gas, its size.
    fn only_a_point(&self, service: Service) -> Option<Remark> {
        if !matches!(service, Service::Power | Service::Gas | Service::Duct) {
            return None;
        }
        let name = &self.fitted.selection.name.value;
        let (needs, opening) = (Wrote(&self.needs.words), &self.fitted.opening.name.value);
        let message = phrase!(
            "`{name}` needs {service} ({needs}), and at the opening `{opening}` only the place where it comes out is told",
            name,
            service,
            needs,
            opening
        );
        let remedy = phrase!("find out what is there and add it at the opening: `service: {{{service}: …}}`", service);
        Some(self.finding(Severity::Query, message).remedy(remedy))
    }
}

/// Whether the opening says where a service comes out: among its points, or as a toilet's rough-in.
fn comes_out(opening: &Opening, service: Service) -> bool {
    let points = opening.points.get();
    let is_a_point =
        points.is_some_and(|points| points.named().iter().any(|(name, point)| *name == service && !point.is_absent()));
    let hollow = opening.hollow.get();
    is_a_point || (service == Service::Drain && hollow.is_some_and(|hollow| !hollow.rough_in.is_absent()))
}
