namespace Circuits.Solving;

/// <summary>Where oil comes from in a solved pressure field. Holds the work arrays of one thread.</summary>
/// <param name="plan">The compiled network.</param>
/// <param name="field">The field, once it is solved.</param>
internal sealed class OilSupply(Plan plan, PressureField field)
{
    private readonly bool[] supplied = new bool[plan.Cells];
    private readonly CellQueue ends = new(plan.Cells);
    private bool knowsSupplied;

    /// <summary>The field is solved anew.</summary>
    public void Forget() => knowsSupplied = false;

    /// <summary>
    /// Whether closing an open link, after a solve, changes no pressure: no oil flows on either side, and each side still has
    /// what fixes it, or the other side, another way round.
    /// </summary>
    /// <param name="link">The link's number in the plan; -1 for one that lies within a cell.</param>
    public bool IsNeedless(int link)
    {
        if (link < 0) return true;
        var (a, b) = (plan.Links[link].A, plan.Links[link].B);
        if (field.Fixing[a] != Fixing.Free) (a, b) = (b, a);
        if (field.Fixing[a] != Fixing.Free || field.IsInFlow(a)) return false;
        return Keeps(a, b, link) && (field.Fixing[b] != Fixing.Free || Keeps(b, a, link));
    }

    /// <summary>Whether a free cell, without a link, still reaches something fixed or another cell.</summary>
    private bool Keeps(int cell, int other, int without)
    {
        Array.Clear(supplied);
        knowsSupplied = false;
        ends.Clear();
        Supply(cell);
        while (ends.TryTake(out var at))
        {
            for (var k = plan.First[at]; k < field.Open.End[at]; k++)
            {
                if (field.Open.Link[k] == without) continue;
                var next = field.Open.Other[k];
                if (next == other || field.Fixing[next] != Fixing.Free) return true;
                Supply(next);
            }
        }

        return false;
    }

    /// <summary>
    /// Whether oil that a regulator takes comes from no source but regulators that are fed by it: two of them, or one with
    /// its outlet open to its supply, cannot hold each other up.
    /// </summary>
    public bool FeedsItself(int cell)
    {
        for (var hops = 0; cell >= 0 && hops <= plan.Regulators.Length; hops++)
        {
            var governs = field.Governs(cell);
            if (governs < 0 || field.Fixing[governs] is Fixing.Pump or Fixing.Given) return false;
            if (field.Fixing[governs] == Fixing.Free) return !IsSupplied(governs);
            if (field.Fixing[governs] == Fixing.Sump) break;
            cell = plan.Regulators[field.HeldBy[governs]].From;
        }

        return true;
    }

    /// <summary>Whether oil of the pump or from outside comes to a flowing cell.</summary>
    private bool IsSupplied(int cell)
    {
        if (!knowsSupplied) FindSupplied();
        return supplied[cell];
    }

    private void FindSupplied()
    {
        knowsSupplied = true;
        Array.Clear(supplied);
        ends.Clear();
        for (var cell = 1; cell < plan.Cells; cell++)
        {
            if (field.Fixing[cell] is Fixing.Pump or Fixing.Given && field.Pressure[cell] > 0) Supply(cell);
        }

        while (ends.TryTake(out var cell))
        {
            foreach (var other in field.Open.From(cell)) Supply(other);

            for (var i = 0; i < plan.Regulators.Length; i++)
            {
                if (plan.Regulators[i].From == cell && field.HeldBy[plan.Regulators[i].Out] == i) Supply(plan.Regulators[i].Out);
            }
        }
    }

    private void Supply(int cell)
    {
        if (cell == 0 || supplied[cell]) return;
        supplied[cell] = true;
        ends.Add(cell);
    }
}
