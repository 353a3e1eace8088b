using System.ComponentModel;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies;

namespace Circuits.Rendering.Json;

[Description("What one of many sets of changes comes to, on a line of its own.")]
internal sealed class ManyRowDocument : AssemblyDocument
{
    public const string Name = "what-if-row";

    private readonly ManyRow row;
    private readonly JudgeMode mode;

    internal ManyRowDocument(ManyRow row, JudgeMode mode) : base(Name, row.Assembly) => (this.row, this.mode) = (row, mode);

    [Description("The name of the set of changes.")] public string Job => row.Name;
    [Description("What was done to the parts, in words.")] public IEnumerable<Findings.Phrase> Changes => row.Assembly.Changes;
    [Description(VerdictDocument.Modes)] public JudgeMode Mode => mode;
    [Description("The worst gear's.")] public Verdict Verdict => row.Verdict;

    [Description("Gear to verdict.")]
    public IReadOnlyDictionary<string, Verdict> Gears => Fields.Of(row.Assembly.Unit.Gears.Zip(row.Verdicts, (gear, verdict) => KeyValuePair.Create(gear.Name, verdict)));

    [Description("Change of gear to the worst that it comes to at its conditions; empty for the static answer.")]
    public IReadOnlyDictionary<string, ShiftVerdict> ChangesOfGear => Fields.Of(row.Changes.Select(change => KeyValuePair.Create(change.Change, change.Verdict)));
}
