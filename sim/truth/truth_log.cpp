#include "sim/truth/truth_log.hpp"

#include "sim/reduction/csv.hpp"

namespace stallwright {

std::vector<TruthRow> read_truth_log(const std::filesystem::path& file) {
  const std::vector<TruthColumn> numbers = truth_numbers();
  CsvRequest request;
  request.numbers = {"t_s"};
  for (const TruthColumn& n : numbers)
    (n.may_be_empty ? request.numbers_or_empty : request.numbers).push_back(n.name);
  const NumericTable table = read_csv(file, request);
  std::vector<TruthRow> rows(table.rows);
  const std::vector<double>& t_s = table.column("t_s");
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i].t_s = t_s[i];
  for (const TruthColumn& n : numbers) {
    const std::vector<double>& column = table.column(n.name);
    for (std::size_t i = 0; i < rows.size(); ++i) rows[i].*n.value = column[i];
  }
  return rows;
}

}  // namespace stallwright
