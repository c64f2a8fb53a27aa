//! Generated from `data/iso286/preferred_fits.csv` by `tests/pick.rs`; do not edit.

use super::pick::Preferred;

pub(super) static PREFERRED: [Preferred; 19] = [
    Preferred { hole: (10, 11), shaft: (2, 11) }, // H11/c11
    Preferred { hole: (10, 9), shaft: (4, 9) }, // H9/d9
    Preferred { hole: (10, 8), shaft: (7, 7) }, // H8/f7
    Preferred { hole: (10, 7), shaft: (9, 6) }, // H7/g6
    Preferred { hole: (10, 7), shaft: (10, 6) }, // H7/h6
    Preferred { hole: (10, 7), shaft: (13, 6) }, // H7/k6
    Preferred { hole: (10, 7), shaft: (15, 6) }, // H7/n6
    Preferred { hole: (10, 7), shaft: (16, 6) }, // H7/p6
    Preferred { hole: (10, 7), shaft: (18, 6) }, // H7/s6
    Preferred { hole: (10, 7), shaft: (20, 6) }, // H7/u6
    Preferred { hole: (2, 11), shaft: (10, 11) }, // C11/h11
    Preferred { hole: (4, 9), shaft: (10, 9) }, // D9/h9
    Preferred { hole: (7, 8), shaft: (10, 7) }, // F8/h7
    Preferred { hole: (9, 7), shaft: (10, 6) }, // G7/h6
    Preferred { hole: (13, 7), shaft: (10, 6) }, // K7/h6
    Preferred { hole: (15, 7), shaft: (10, 6) }, // N7/h6
    Preferred { hole: (16, 7), shaft: (10, 6) }, // P7/h6
    Preferred { hole: (18, 7), shaft: (10, 6) }, // S7/h6
    Preferred { hole: (20, 7), shaft: (10, 6) }, // U7/h6
];
