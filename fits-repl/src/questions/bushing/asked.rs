//! A bushing as typed, with its housing and its shaft.

use crate::query::{Size, Spot, Temperatures, Tolerance};

/// `bushing 20 od 26 long 20, hub steel od 60, bronze, running 0.03..0.06`.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct BushingText {
    /// Its bore, and the limits it is made to.
    pub bore: (Size, Tolerance),
    /// `bushing in place SIZE`: the bore is what it measures, pressed in.
    pub in_place: bool,
    /// `od SIZE`: its outside, and the limits it is made to.
    pub od: Option<(Size, Tolerance)>,
    /// `long SIZE`.
    pub long: Option<Size>,
    /// What it is made of, or `lined`.
    pub material: Option<Spot<String>>,
    /// `hub MATERIAL`: what the housing is made of.
    pub hub: Option<Spot<String>>,
    /// `od SIZE` after `hub`: the housing's outside.
    pub hub_od: Option<Size>,
    /// `housing CLASS`, `housing SIZE`: its bore.
    pub housing: Option<(Option<Size>, Tolerance)>,
    /// `shaft CLASS`, `shaft SIZE`.
    pub shaft: Option<(Option<Size>, Tolerance)>,
    /// `shaft MATERIAL`.
    pub shaft_material: Option<Spot<String>>,
    /// `running SIZE..SIZE`.
    pub running: Option<(Size, Size)>,
    /// `running SERVICE`: rough, motor.
    pub service: Option<Spot<String>>,
    /// `rpm N`: turns a minute.
    pub rpm: Option<Spot<f64>>,
    /// `warm TEMP` or `warm TEMP..TEMP`.
    pub warm: Option<Temperatures>,
}
