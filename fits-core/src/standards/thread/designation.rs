//! [`Designation`]: what was typed of a thread, and the thread it names.

use super::{
    Class, Form, Nominal, Pitch, Series, Side, Thread, metric, scan::is_screw, systems, unified,
    unified_series,
};
use crate::error::Error;

/// A part of a designation and the bytes it stood at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Typed<T> {
    /// What was read.
    pub value: T,
    /// First byte and the one after the last.
    pub at: (usize, usize),
}

/// A thread's designation as typed; no table has been asked.
///
/// ```
/// use fits_core::standards::thread::{Side, scan};
/// let (designation, taken) = scan("3/8-24 2B/2A tap").expect("a thread")?;
/// assert_eq!(taken, 12);
/// assert_eq!(designation.resolve()?.to_string(), "3/8-24 UNF");
/// let class = designation.class(Side::Internal).expect("typed");
/// assert_eq!((class.value.to_string().as_str(), class.at), ("2B", (7, 9)));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Designation {
    /// The system; Unified where inches and a pitch were typed alone.
    pub form: Form,
    /// The size.
    pub nominal: Typed<Nominal>,
    /// The pitch, where one was typed.
    pub pitch: Option<Typed<Pitch>>,
    /// The series that the words say: UNC, BSF ...
    pub series: Option<Typed<Series>>,
    /// How many starts.
    pub starts: u8,
    /// Left-hand?
    pub left: bool,
    /// Up to two classes, in the order typed.
    pub classes: [Option<Typed<Class>>; 2],
}

impl Designation {
    /// The thread that it names, its classes checked.
    ///
    /// # Errors
    /// The size is not in the series said, the pitch is out of all measure, or
    /// the system has no such class; the error's span is of the text scanned.
    pub fn resolve(&self) -> Result<Thread, Error> {
        let thread = match self.form {
            Form::Metric => metric::resolve(self),
            Form::Unified | Form::UnifiedRounded => unified_series::resolve(self),
            _ => systems::resolve(self),
        }?;
        let thread = thread.with_starts(self.starts)?;
        let thread = if self.left { thread.left_hand() } else { thread };
        for class in self.classes.into_iter().flatten() {
            thread.check(class.value).map_err(|error| error.at(class.at.0, class.at.1))?;
        }
        self.one_class_a_side()?;
        Ok(thread)
    }

    /// The thread where its diameter alone matters: a size with no usual pitch
    /// takes one that it is listed with.
    ///
    /// # Errors
    /// As [`Designation::resolve`].
    ///
    /// ```
    /// use fits_core::standards::thread::scan;
    /// let (found, _) = scan("M10").expect("a thread")?;
    /// assert_eq!(found.resolve_diameter()?.major(), "10mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn resolve_diameter(&self) -> Result<Thread, Error> {
        let listed = || {
            let major = self.nominal.value.length().ok()?;
            match self.form {
                Form::Metric => metric::first_pitch(major),
                Form::Unified | Form::UnifiedRounded => unified_series::first_pitch(major),
                _ => None,
            }
        };
        self.resolve().or_else(|error| match (self.pitch, self.series, listed()) {
            (None, None, Some(value)) => {
                let pitch = Some(Typed { value, at: self.nominal.at });
                let thread = Self { pitch, ..*self }.resolve()?;
                Ok(Thread { is_pitch_assumed: true, ..thread })
            }
            _ => Err(error),
        })
    }

    fn one_class_a_side(&self) -> Result<(), Error> {
        let [Some(one), Some(two)] = self.classes else { return Ok(()) };
        let side = one.value.side(self.form);
        if side.is_none() || side != two.value.side(self.form) {
            return Ok(());
        }
        let side = side.map_or("", Side::word);
        Err(Error::not_a_thread(
            format!("{} and {} are both {side} classes", one.value, two.value),
            "give one for the nut and one for the screw",
        )
        .at(two.at.0, two.at.1))
    }

    /// A class that the thread has, the nearest to one that it has not.
    ///
    /// ```
    /// use fits_core::standards::thread::{Class, scan};
    /// let (designation, _) = scan("M10 2A").expect("a thread")?;
    /// let typed = designation.classes[0].expect("a class").value;
    /// assert_eq!(designation.nearest_class(typed), Some(Class::of(6, 'g')));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn nearest_class(&self, class: Class) -> Option<Class> {
        let side = match class {
            // A nut's class has a capital.
            Class::Zones { pitch, .. } if pitch.position.is_ascii_lowercase() => Side::External,
            _ => class.side(self.form).unwrap_or(Side::Internal),
        };
        match (self.form, metric::unified_side(class)) {
            (Form::Metric, Some(side)) => Some(metric::usual(side)),
            (Form::Metric, None) => metric::nearest(side, class),
            (Form::Unified | Form::UnifiedRounded, _) => {
                Some(unified::nearest(class, if side == Side::External { 'A' } else { 'B' }))
            }
            _ => Self { classes: [None, None], ..*self }.resolve().ok()?.default_class(side),
        }
    }

    /// The class typed for a side. Of two, one that serves both sides takes
    /// the side that the other leaves; of two such the first is the nut's.
    ///
    /// ```
    /// use fits_core::standards::thread::{Class, Side, scan};
    /// let (designation, _) = scan("M10 6H/6g").expect("a thread")?;
    /// let class = |side| designation.class(side).map(|typed| typed.value);
    /// assert_eq!(class(Side::Internal), Some(Class::of(6, 'H')));
    /// assert_eq!(class(Side::External), Some(Class::of(6, 'g')));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn class(&self, side: Side) -> Option<Typed<Class>> {
        let known = |class: Typed<Class>| class.value.side(self.form);
        let class = match self.classes {
            [Some(one), Some(two)] => {
                let left = known(two).map(|side| match side {
                    Side::External => Side::Internal,
                    Side::Internal => Side::External,
                });
                let first = known(one).or(left).unwrap_or(Side::Internal);
                Some(if side == first { one } else { two })
            }
            [one, two] => one.or(two),
        };
        class.filter(|class| known(*class).is_none_or(|of| of == side))
    }
}

impl Thread {
    /// Is it a class of this thread's system?
    fn check(&self, class: Class) -> Result<(), Error> {
        match self.form {
            Form::Metric => metric::check(class),
            Form::Unified | Form::UnifiedRounded => unified::check(self.form, class),
            _ => systems::check(self, class),
        }
    }
}

/// The designation in the standard's style.
pub(super) fn written(thread: &Thread, external: Option<Class>, internal: Option<Class>) -> String {
    let (nominal, pitch) = (thread.nominal().to_string(), thread.pitch().figure());
    let said = |class: Option<Class>| class.filter(|class| *class != Class::Sole);
    let classes = match (said(internal), said(external)) {
        (Some(nut), Some(screw)) if nut != screw => format!("{nut}/{screw}"),
        (Some(class), _) | (None, Some(class)) => class.to_string(),
        (None, None) => String::new(),
    };
    let dash = if classes.is_empty() { "" } else { "-" };
    match thread.form() {
        Form::Metric => {
            let pitch = if thread.starts() == 1 {
                pitch
            } else {
                format!("Ph{}P{pitch}", thread.lead().figure())
            };
            let hand = if thread.is_left_hand() { "-LH" } else { "" };
            format!("M{nominal}x{pitch}{dash}{classes}{hand}")
        }
        form @ (Form::Unified | Form::UnifiedRounded) => {
            // `1-64` would be read as number 1, and `12-8` as 12 in.
            let nominal = match thread.nominal() {
                Nominal::Number(number) if !is_screw(number, thread.pitch()) => {
                    format!("#{number}")
                }
                Nominal::Fraction { whole, numerator: 0, .. }
                    if u8::try_from(whole).is_ok_and(|whole| is_screw(whole, thread.pitch())) =>
                {
                    format!("{whole}in")
                }
                _ => nominal,
            };
            let symbol = unified_series::symbol(form, thread.series());
            let hand = if thread.is_left_hand() { "-LH" } else { "" };
            let starts = match thread.starts() {
                1 => String::new(),
                starts => format!(" {starts} starts"),
            };
            format!("{nominal}-{pitch} {symbol}{dash}{classes}{hand}{starts}")
        }
        form => {
            let has_dash = matches!(form, Form::Trapezoidal | Form::Acme | Form::StubAcme);
            let gap = if has_dash || classes.is_empty() { dash } else { " " };
            let hand = if thread.is_left_hand() { "-LH" } else { "" };
            let starts = match thread.starts() {
                // The name of a trapezoidal thread has its lead.
                starts if starts > 1 && form != Form::Trapezoidal => format!(" {starts} starts"),
                _ => String::new(),
            };
            format!("{}{gap}{classes}{hand}{starts}", systems::name(thread))
        }
    }
}
