#pragma once

namespace roundwright::torture {

// What driver and child agree upon: pipes by their numbers, the rest by the environment.

inline constexpr int journal_file = 3;
inline constexpr int commands_file = 4;
inline constexpr auto seed_variable = "ROUNDWRIGHT_TORTURE_SEED";        ///< set: the process is a child
inline constexpr auto pauses_variable = "ROUNDWRIGHT_TORTURE_PAUSES";    ///< "60-200": ms between two keys
inline constexpr auto rests_variable = "ROUNDWRIGHT_TORTURE_RESTS";      ///< set: types only when told to
inline constexpr auto answers_variable = "ROUNDWRIGHT_TORTURE_ANSWERS";  ///< "bring>later;don't>don't"
inline constexpr auto toys_variable = "ROUNDWRIGHT_TORTURE_TOYS";        ///< folder of the toys

}  // namespace roundwright::torture
