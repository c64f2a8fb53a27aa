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

/// The fields are the answers of the methods of those names.
macro_rules! as_record {
    ($($type:ident { $($field:ident),* })*) => {$(
        impl Serialize for $type {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let fields = [$(stringify!($field)),*].len();
                let mut record = serializer.serialize_struct(stringify!($type), fields)?;
                $(record.serialize_field(stringify!($field), &self.$field())?;)*
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
    size::Size,
    speech::Speech,
    standards::{
        bought::{Family, Keyway},
        drills::Drill,
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
    Drill { name, series, diameter, known, source }
    Keyway { standard, width, height, known, source }
    ClearanceHole { screw, fit, hole, drill, known, source }
    ChartHole { hole, drill, known, source }
    ChartDrill { drill, known, source }
    Overrun { length, pitch, known, source }
    Runout { pitch, runout, runout_short, shoulder, groove, known, source }
}

#[cfg(feature = "uom")]
mod typed {
    use serde::{Serialize, Serializer, ser::SerializeStruct as _};

    use crate::{
        shop::{assemble::Assembly, verdict::Measured},
        standards::materials::Material,
    };

    as_text! {
        Material => |material| material.name().to_owned();
    }

    as_record! {
        Assembly {
            worst, yields, breaks, keeps, figures_hold, yielded_share, press_force,
            soft_press_force, axial_hold, torque
        }
        Measured { places, read, size, count, form, spread, scatters, uncertainty }
    }
}
