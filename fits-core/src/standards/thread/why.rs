//! Why a thread's figures are what they are.
