using Google.OrTools.LinearSolver;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Master;

/// <summary>
/// Lets the sub-panels of a panel share out its width in a program over patterns: what row r lacks, shift_r &lt;= need_r, others take over, each
/// at most the room that the planer leaves it, -shift_r &lt;= room_r; sum_r shift_r &lt;= 0. All in shares of a row's equal width, as the rows are.
/// </summary>
internal sealed class WidthShifts
{
    private readonly List<(StripRow Row, Variable Shift)> shifts = [];

    public WidthShifts(Solver solver, PlanningModel model, Constraint[] cover)
    {
        foreach (var split in model.Splits)
        {
            var balance = solver.MakeConstraint(double.NegativeInfinity, 0, "");
            foreach (var row in split.Rows)
            {
                // At first without limits: as all sub-panels are alike, equal ones would do as well, and so all of them have the same price.
                var shift = solver.MakeNumVar(double.NegativeInfinity, double.PositiveInfinity, "");
                cover[row.Index].SetCoefficient(shift, 1);
                balance.SetCoefficient(shift, (double)row.Needed / split.Rows[0].Needed);
                shifts.Add((row, shift));
            }
        }
    }

    /// <summary>Asks for what is left only.</summary>
    public void SetRemainder(Remainder rest)
    {
        foreach (var (row, shift) in shifts)
        {
            shift.SetBounds(-(double)rest.Room(row) / row.Needed, (double)rest.Need[row.Index] / row.Needed);
        }
    }
}
