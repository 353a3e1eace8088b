using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Advice;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Remedies;

namespace Circuits.Studies.JobSheets;

/// <summary>What whoever writes the sheet knows and the program cannot.</summary>
/// <param name="Job">The ticket, the vehicle, whatever names the job; null when not said.</param>
/// <param name="Complaints">What the driver complains of, in the words that were given.</param>
/// <param name="Notes">Anything else that belongs on the sheet, as it was given.</param>
/// <param name="Files">The circuit files, each with a fingerprint of its content.</param>
public sealed record JobGiven(string? Job, ImmutableArray<string> Complaints, ImmutableArray<string> Notes, ImmutableArray<FileMark> Files)
{
    /// <summary>What of the complaints, readings and healthy gears is understood, so that it can be diagnosed.</summary>
    public ImmutableArray<Evidence> Evidence { get; init; } = [];

    /// <summary>Complaints that are not understood; they stand on the sheet and no more.</summary>
    public ImmutableArray<string> NotUnderstood { get; init; } = [];
}

/// <summary>What was told, worked backwards from the parts as found.</summary>
/// <param name="Report">The faults that explain it.</param>
/// <param name="Next">The test that tells most for its cost; null where none tells anything.</param>
public sealed record JobDiagnosis(DiagnosisReport Report, WeighedTest? Next);

/// <summary>A file as it was read.</summary>
/// <param name="File">Its path, as it was named.</param>
/// <param name="Fingerprint">The first digits of the SHA-256 of its content.</param>
public sealed record FileMark(string File, string Fingerprint);

/// <summary>A job sheet: complaint, cause, correction. It holds what was given and what was computed, and nothing else.</summary>
/// <param name="Given">What was given.</param>
/// <param name="Found">The report on the parts as they were found.</param>
/// <param name="Remedy">What would make them right.</param>
/// <param name="Diagnosis">What explains what was told; null where nothing that can be diagnosed was told.</param>
public sealed record JobSheet(JobGiven Given, AssemblyReport Found, RemedyReport Remedy, JobDiagnosis? Diagnosis)
{
    private const string Assumed = "assumed-size";

    /// <summary>What is wrong with the parts as they were found, or may be.</summary>
    public ImmutableArray<Finding> Causes => [.. Found.Findings.Where(finding => finding.Severity != Severity.Note && finding.Rule != Assumed)];

    /// <summary>The assembly once the first correction is made; the one found where it is right; null where no correction was found.</summary>
    public AssemblyReport? Mended => Remedy.IsRight ? Found : Remedy.Parts.Concat(Remedy.Bench).FirstOrDefault()?.After;

    /// <summary>Makes the sheet.</summary>
    /// <param name="judge">The unit's judge.</param>
    /// <param name="assembly">The parts as they were found.</param>
    /// <param name="given">What was given.</param>
    /// <param name="options">How far to look for a correction.</param>
    /// <param name="stop">Breaks off.</param>
    public static JobSheet Of(UnitJudge judge, Assembly assembly, JobGiven given, RemedyOptions options, CancellationToken stop)
    {
        var remedy = RemedySearch.Run(judge, assembly, options, stop);
        return new JobSheet(given, remedy.Before, remedy, given.Evidence.IsEmpty ? null : Diagnose(judge, assembly, given.Evidence, stop));
    }

    /// <summary>Single faults first; pairs only where none of them explains all of it.</summary>
    private static JobDiagnosis Diagnose(UnitJudge judge, Assembly assembly, ImmutableArray<Evidence> evidence, CancellationToken stop)
    {
        var solver = new EffectSolver(judge, assembly);
        var report = DiagnosisStudy.Run(solver, evidence, new DiagnosisOptions { Pairs = false }, stop);
        if (report is { SoundExplains: false, Contradictions.IsEmpty: true, Explaining.IsEmpty: true })
            report = DiagnosisStudy.Run(solver, evidence, new DiagnosisOptions(), stop);
        return new JobDiagnosis(report, report.Explaining.IsEmpty ? null : TestAdvice.For(solver, report).Best().FirstOrDefault());
    }
}
