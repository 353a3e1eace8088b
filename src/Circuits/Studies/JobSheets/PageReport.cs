using System.Collections.Immutable;
using Circuits.Studies.Drawing;
using Circuits.Studies.Shifts;

namespace Circuits.Studies.JobSheets;

/// <summary>Everything that goes on the page to hand over.</summary>
/// <param name="Sheet">The job sheet.</param>
/// <param name="Views">Every gear, to be drawn.</param>
/// <param name="Shifts">The timed shifts; null where the unit has none, or nothing pumps.</param>
/// <param name="Command">The command line that made it, word by word.</param>
/// <param name="Version">The program's version.</param>
public sealed record PageReport(JobSheet Sheet, AssemblyViews Views, ShiftReport? Shifts, ImmutableArray<string> Command, string Version);
