#include "model/profile.h"

namespace burrow {

bool isMeasuredByBody(Order order) {
    return order == Order::scorpion || order == Order::vinegaroon;
}

std::vector<Caution> cautions(const Profile& profile) {
    std::vector<Caution> all;
    if (profile.venom.value == Venom::significant) all.push_back(Caution::strongVenom);
    if (profile.order == Order::scorpion) all.push_back(Caution::sting);
    if (profile.venom.value == Venom::notable) all.push_back(Caution::venom);
    if (profile.fast.value) all.push_back(Caution::fast);
    if (profile.hairs.value != Hairs::none) all.push_back(Caution::hairs);
    if (profile.order == Order::vinegaroon) all.push_back(Caution::spray);
    return all;
}

}  // namespace burrow
