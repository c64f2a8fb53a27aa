//! How values that stand for a row of a table, or for a text, are serialised:
//! as that text, or as a record of what they answer.

use serde::{Serialize, Serializer, ser::SerializeStruct as _};

macro_rules! as_text {
    ($($type:ty => $text:expr;)*) => {$(
        impl Serialize for $type {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let text: fn(&$type) -> String = $text;
                serializer.serialize_str(&text(self))
            }
        }
    )*};
}

/// The fields are the answers of the methods of those names; those behind the
/// semicolon may fail, and are null where they do.
macro_rules! as_record {
    ($($type:ident { $($field:ident),* $(; $($limits:ident),*)? })*) => {$(
        impl Serialize for $type {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let fields = [$(stringify!($field),)* $($(stringify!($limits)),*)?].len();
                let mut record = serializer.serialize_struct(stringify!($type), fields)?;
                $(record.serialize_field(stringify!($field), &self.$field())?;)*
                $($(record.serialize_field(stringify!($limits), &self.$limits().ok())?;)*)?
                record.end()
            }
        }
    )*};
}

use crate::{
    error::Error,
    shop::{
        FitDesignation, Spec,
        infeed::{Overrun, Runout},
        pick::FitClasses,
        tap::{ChartDrill, ChartHole, ClearanceHole},
        words::Word,
    },
    size::{Number, Size},
    speech::Speech,
    standards::{
        bought::{Ball, Family, Keyway},
        drills::Drill,
        hardware::{
            ClevisPin, CotterPin, Gland, ORing, RetainingRing, SpringPin, TaperPin, Woodruff,
        },
        instruments::Instrument,
        iso286::{Feature, Grade, Letter},
        processes::Process,
        thread::{Class, Nominal, Pitch, Thread, Zone},
    },
};

as_text! {
    Error => ToString::to_string;
    Speech => ToString::to_string;
    FitClasses => ToString::to_string;
    FitDesignation => ToString::to_string;
    Size => ToString::to_string;
    Spec => ToString::to_string;
    Word => |word| word.name().to_owned();
    Family => |family| family.name().to_owned();
    Instrument => |instrument| instrument.name().to_owned();
    Process => |process| process.name().to_owned();
    Grade => ToString::to_string;
    Letter => |letter| letter.name(Feature::Hole).to_owned();
    Class => ToString::to_string;
    Nominal => ToString::to_string;
    Pitch => ToString::to_string;
    Thread => ToString::to_string;
    Zone => ToString::to_string;
}

as_record! {
    Number { ratio, is_fraction }
    Drill { name, series, diameter, known, source }
    Keyway { standard, width, height, known, source }
    ClearanceHole { screw, fit, hole, drill, known, source }
    ChartHole { hole, drill, known, source }
    ChartDrill { drill, known, source }
    Overrun { length, pitch, known, source }
    Ball { number, bore, outside, corner, known, source, note }
    SpringPin { kind, source; free, hole, squeeze }
    TaperPin { name, is_inch, size, taper, known, source; end_limits }
    ClevisPin { cotter, length, source; shank, cotter_hole, centre }
    CotterPin { hole, source; shank }
    RetainingRing { kind, note; groove, width, depth, thickness, play }
    ORing { number, inside, section, known; outside }
    Gland { used, section, squeeze, filled, play, known; depth, width }
    Woodruff { number, width, diameter, known, width_known; height, shaft_depth, hub_depth, widths }
    Runout { pitch, runout, runout_short, shoulder, groove, known, source }
}

#[cfg(feature = "uom")]
mod typed {
    use serde::{Serialize, Serializer, ser::SerializeStruct as _};

    use crate::{
        shop::{
            assemble::Assembly, rescue::RetainingCompound, service::Printed, verdict::Measured,
        },
        standards::materials::Material,
    };

    as_text! {
        Material => |material| material.name().to_owned();
        RetainingCompound => |kind| kind.name().to_owned();
    }

    as_record! {
        Assembly {
            worst, yields, breaks, keeps, figures_hold, yielded_share, press_force,
            soft_press_force, axial_hold, torque
        }
        Printed { name, comes_out_small, creeps_above_c, note, reason }
        Measured { places, read, size, count, form, spread, scatters, uncertainty }
    }
}

#[cfg(test)]
mod tests {
    use crate::standards::hardware::{RetainingRing, RingKind};

    #[test]
    fn a_row_is_written_as_what_it_answers() {
        let ring = RetainingRing::find(RingKind::Din471, "20mm".parse().unwrap()).unwrap()[0];
        let json = serde_json::to_value(ring).unwrap();
        assert_eq!(json["kind"], "din471");
        let depth = serde_json::to_value(ring.depth().unwrap()).unwrap();
        assert_eq!(json["depth"], depth);
        assert!(depth.is_object() || depth.is_string(), "{depth}");
    }
}
