using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies;
using Circuits.Studies.Advice;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Hazards;
using Circuits.Studies.Identify;
using Circuits.Studies.Matrix;
using Circuits.Studies.Pressures;
using Circuits.Studies.Remedies;
using Circuits.Studies.Shifts;
using Circuits.Studies.Sizing;

namespace Circuits.Rendering.Json;

/// <summary>Results as documents for programs.</summary>
public static class Documents
{
    /// <summary>One assembly, every gear.</summary>
    public static Document Of(AssemblyReport report) => new GearsDocument(report);

    /// <summary>A check of one file.</summary>
    public static Document Of(CheckedFile file) => new CheckDocument(file);

    /// <summary>Rules.</summary>
    public static Document Of(IEnumerable<Rule> rules) => new ExplainDocument(rules);

    /// <summary>Traces of an assembly with its nearest matched sets.</summary>
    public static Document Of(Assembly assembly, ImmutableArray<string> nearest, ImmutableArray<Trace> traces) => new TraceDocument(assembly, nearest, traces);

    /// <summary>What changes do; the job that they are for, or null.</summary>
    public static Document Of(WhatIfReport report, string? job) => new WhatIfDocument(report, job);

    /// <summary>One of many sets of changes, on a line.</summary>
    public static string Line(ManyRow row, JudgeMode mode) => JsonText.Line(new ManyRowDocument(row, mode));

    /// <summary>What would make an assembly right.</summary>
    public static Document Of(RemedyReport report) => new RemedyDocument(report);

    /// <summary>A failure mode and effects table.</summary>
    public static Document Of(HazardReport report) => new HazardsDocument(report);

    /// <summary>Steady pressures.</summary>
    public static Document Of(PressureReport report) => new PressuresDocument(report);

    /// <summary>Timed shifts.</summary>
    public static Document Of(ShiftReport report) => new ShiftsDocument(report);

    /// <summary>A hole for a wanted time.</summary>
    public static Document Of(SizeReport report) => new SizeDocument(report);

    /// <summary>A diagnosis with tests, or null for none, and a plan so many tests deep, or 0 for none.</summary>
    public static Document Of(DiagnosisReport report, TestAdvice? advice, int depth) => new DiagnoseDocument(report, advice, depth);

    /// <summary>An identification.</summary>
    public static Document Of(Identification report) => new IdentifyDocument(report);

    /// <summary>A plan to check with air.</summary>
    public static Document Of(AirReport report) => new AirCheckDocument(report);

    /// <summary>A whole matrix; every row as an object of JSON, in order.</summary>
    public static Document Of(MatrixSummary summary, IEnumerable<string> rows) => new MatrixDocument(summary, rows);
}
