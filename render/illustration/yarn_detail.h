#pragma once

namespace roundwright::render {

/// How much of the yarn is drawn: at the size of a grain of rice, highlights and twist only blur.
enum class YarnDetail { cords, highlights, twist };

}  // namespace roundwright::render
