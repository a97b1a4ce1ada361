// The species of the invented room. A list of its own, so that the same seed makes the same room however
// many species the program comes to know.
#pragma once

#include <algorithm>
#include <array>
#include <string_view>

namespace burrow::demo {

/// In the order of their names.
inline constexpr std::array<std::string_view, 52> keptSpecies{
    "Acanthoscurria geniculata", "Aphonopelma chalcodes",   "Aphonopelma seemanni",
    "Avicularia avicularia",     "Avicularia juruensis",    "Avicularia minatrix",
    "Brachypelma albiceps",      "Brachypelma auratum",     "Brachypelma boehmei",
    "Brachypelma emilia",        "Brachypelma hamorii",     "Brachypelma klaasi",
    "Brachypelma smithi",        "Caribena laeta",          "Caribena versicolor",
    "Ceratogyrus darlingi",      "Cyriopagopus lividus",    "Dolichothele diamantinensis",
    "Ephebopus murinus",         "Grammostola grossa",      "Grammostola pulchra",
    "Grammostola pulchripes",    "Grammostola rosea",       "Heterometrus spinifer",
    "Heteroscodra maculata",     "Lasiodora parahybana",    "Neoholothele incei",
    "Nhandu chromatus",          "Omothymus schioedtei",    "Pandinopsis dictator",
    "Pandinus imperator",        "Pelinobius muticus",      "Poecilotheria fasciata",
    "Poecilotheria formosa",     "Poecilotheria metallica", "Poecilotheria miranda",
    "Poecilotheria ornata",      "Poecilotheria regalis",   "Poecilotheria rufilata",
    "Poecilotheria striata",     "Poecilotheria subfusca",  "Poecilotheria tigrinawesseli",
    "Psalmopoeus cambridgei",    "Psalmopoeus irminia",     "Psalmopoeus pulcher",
    "Stromatopelma calceatum",   "Theraphosa apophysis",    "Theraphosa blondi",
    "Theraphosa stirmi",         "Tliltocatl albopilosus",  "Tliltocatl kahlenbergi",
    "Tliltocatl vagans"};

[[nodiscard]] constexpr bool isKeptSpecies(std::string_view name) {
    return std::binary_search(keptSpecies.begin(), keptSpecies.end(), name);
}

}  // namespace burrow::demo
