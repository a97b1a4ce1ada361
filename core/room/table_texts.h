// The files of assets/rules/tables as they are read.
#pragma once

#include <functional>
#include <map>
#include <string>

namespace burrow {

/// The texts of prey.json, homes.json, air.json, away.json, sexing.json and measure.json by these names
/// without their ending.
using TableTexts = std::map<std::string, std::string, std::less<>>;

}  // namespace burrow
