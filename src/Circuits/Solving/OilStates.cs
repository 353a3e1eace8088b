namespace Circuits.Solving;

/// <summary>Sorts cells by what their oil is joined to.</summary>
internal static class OilStates
{
    private const byte Fed = 1;
    private const byte Drained = 2;

    public static OilState[] Of(Plan plan, PressureField field)
    {
        var reach = new byte[plan.Cells];
        var queue = new Queue<int>();
        for (var cell = 0; cell < plan.Cells; cell++)
        {
            if (field.Fixing[cell] != Fixing.Free) Spread(plan, field, reach, queue, cell);
        }

        return [.. Enumerable.Range(0, plan.Cells).Select(cell => reach[cell] switch
        {
            Fed => OilState.Supply,
            Drained => OilState.Exhaust,
            Fed | Drained => OilState.Between,
            _ => OilState.Trapped,
        })];
    }

    /// <summary>Marks what one fixed cell reaches without passing another.</summary>
    private static void Spread(Plan plan, PressureField field, byte[] reach, Queue<int> queue, int source)
    {
        var mark = field.Pressure[source] > 0 ? Fed : Drained;
        reach[source] |= mark;
        queue.Enqueue(source);
        while (queue.TryDequeue(out var cell))
        {
            for (var k = plan.First[cell]; k < plan.First[cell + 1]; k++)
            {
                var link = plan.Touching[k];
                if (!field.Open[link]) continue;
                var other = plan.Links[link].A == cell ? plan.Links[link].B : plan.Links[link].A;
                if (field.Fixing[other] != Fixing.Free || (reach[other] & mark) != 0) continue;
                reach[other] |= mark;
                queue.Enqueue(other);
            }
        }
    }
}
