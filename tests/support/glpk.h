// The GNU Linear Programming Kit as a second opinion on planned visits.
#pragma once

#include <glpk.h>

#include <cmath>
#include <memory>
#include <optional>
#include <vector>

#include "visits/cover.h"

namespace burrow::test {

/// Columns: one for each slot (visited or not), and with a limit one for each window and slot of it.
class VisitProgram {
public:
    VisitProgram(const std::vector<visits::SlotWindow>& windows, int slots, std::optional<int> most,
                 bool relaxed = false)
        : problem_(glp_create_prob(), glp_delete_prob) {
        glp_term_out(GLP_OFF);
        auto* p = problem_.get();
        glp_set_obj_dir(p, GLP_MIN);
        glp_add_cols(p, slots);
        for (int slot = 1; slot <= slots; ++slot) column(slot, 1, relaxed);
        if (!most) {
            for (const auto& window : windows) {
                std::vector<int> indices{0};
                for (int slot = window.first; slot <= window.last; ++slot)
                    indices.push_back(slot + 1);
                row(indices, std::vector<double>(indices.size(), 1), GLP_LO, 1);
            }
            return;
        }
        std::vector<std::vector<int>> users(static_cast<std::size_t>(slots));
        for (const auto& window : windows) {
            std::vector<int> indices{0};
            for (int slot = window.first; slot <= window.last; ++slot) {
                const int added = glp_add_cols(p, 1);
                column(added, 0, relaxed);
                indices.push_back(added);
                users[static_cast<std::size_t>(slot)].push_back(added);
            }
            row(indices, std::vector<double>(indices.size(), 1), GLP_FX, 1);
        }
        for (int slot = 0; slot < slots; ++slot) {
            std::vector<int> indices{0, slot + 1};
            std::vector<double> values{0, -static_cast<double>(*most)};
            for (const int user : users[static_cast<std::size_t>(slot)]) {
                indices.push_back(user);
                values.push_back(1);
            }
            row(indices, values, GLP_UP, 0);
        }
    }

    /// The least number of visits, or nothing where not all windows can be met.
    [[nodiscard]] std::optional<int> fewest() {
        glp_iocp parameters;
        glp_init_iocp(&parameters);
        parameters.presolve = GLP_ON;
        parameters.msg_lev = GLP_MSG_OFF;
        if (glp_intopt(problem_.get(), &parameters) != 0) return std::nullopt;
        if (glp_mip_status(problem_.get()) != GLP_OPT) return std::nullopt;
        return static_cast<int>(std::lround(glp_mip_obj_val(problem_.get())));
    }
    /// The optimum of the linear program.
    [[nodiscard]] double relaxed() {
        glp_smcp parameters;
        glp_init_smcp(&parameters);
        parameters.msg_lev = GLP_MSG_OFF;
        glp_simplex(problem_.get(), &parameters);
        return glp_get_obj_val(problem_.get());
    }

private:
    void column(int index, double cost, bool relaxed) {
        glp_set_obj_coef(problem_.get(), index, cost);
        if (relaxed) {
            glp_set_col_bnds(problem_.get(), index, GLP_DB, 0, 1);
        } else {
            glp_set_col_kind(problem_.get(), index, GLP_BV);
        }
    }
    void row(const std::vector<int>& indices, const std::vector<double>& values, int kind,
             double bound) {
        const int added = glp_add_rows(problem_.get(), 1);
        glp_set_row_bnds(problem_.get(), added, kind, bound, bound);
        glp_set_mat_row(problem_.get(), added, static_cast<int>(indices.size()) - 1, indices.data(),
                        values.data());
    }

    std::unique_ptr<glp_prob, decltype(&glp_delete_prob)> problem_;
};

}  // namespace burrow::test
