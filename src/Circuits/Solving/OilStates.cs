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
            if (field.Fixing[cell] != Fixing.Free) Spread(field, reach, queue, cell);
        }

        var states = new OilState[plan.Cells];
        for (var cell = 0; cell < states.Length; cell++)
        {
            states[cell] = reach[cell] switch
            {
                Fed => OilState.Supply,
                Drained => OilState.Exhaust,
                Fed | Drained => OilState.Between,
                _ => OilState.Trapped,
            };
        }

        return states;
    }

    /// <summary>Marks what one fixed cell reaches without passing another.</summary>
    private static void Spread(PressureField field, byte[] reach, Queue<int> queue, int source)
    {
        var mark = field.Pressure[source] > 0 ? Fed : Drained;
        reach[source] |= mark;
        queue.Enqueue(source);
        while (queue.TryDequeue(out var cell))
        {
            foreach (var other in field.Open.From(cell))
            {
                if (field.Fixing[other] != Fixing.Free || (reach[other] & mark) != 0) continue;
                reach[other] |= mark;
                queue.Enqueue(other);
            }
        }
    }
}
