using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Matrix;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Studies.Matrix;

/// <summary>What a gear does is worked out by one thread while others wait for it.</summary>
public class AskedGearTests
{
    private static GearBehaviour Some()
    {
        var unit = new DemoUnit("rill/rill.yaml");
        return GearBehaviour.Of(unit.Judge.Report(Assembly.DefaultOf(unit.Unit)).Gears[0]);
    }

    [Fact]
    public async Task One_takes_it_and_the_others_wait_for_the_same_answer()
    {
        var asked = new AskedGear();
        Assert.True(asked.Take());
        Assert.False(asked.Take());
        var waiting = Enumerable.Range(0, 3).Select(_ => Task.Run(asked.Wait, TestContext.Current.CancellationToken)).ToList();
        Assert.Null(asked.Known);
        var answer = Some();
        Assert.Same(answer, asked.Answer(() => answer));
        Assert.All(await Task.WhenAll(waiting), given => Assert.Same(answer, given));
        Assert.Same(answer, asked.Known);
        Assert.False(asked.Take());
    }

    [Fact]
    public async Task Where_one_fails_another_takes_it()
    {
        var asked = new AskedGear();
        Assert.True(asked.Take());
        var waiting = Task.Run(asked.Wait, TestContext.Current.CancellationToken);
        Assert.Throws<OperationCanceledException>(() => asked.Answer(() => throw new OperationCanceledException()));
        Assert.Null(await waiting);
        Assert.True(asked.Take());
    }

    /// <summary>Two threads that come to the same gears at the same time work each of them out once.</summary>
    [Fact]
    public void The_same_key_is_the_same_question_until_it_is_answered()
    {
        var memory = new MatrixMemory();
        Assert.Same(QuestionOf(memory, 1), QuestionOf(memory, 1));
        Assert.NotSame(QuestionOf(memory, 1), QuestionOf(memory, 2));
        var answer = Some();
        memory.Keep(1, answer);
        Assert.Same(answer, memory.Ask(1, out var question));
        Assert.Null(question);
        Assert.NotNull(QuestionOf(memory, 2));
    }

    [Fact]
    public void Answers_alike_are_kept_once()
    {
        var memory = new MatrixMemory();
        memory.Keep(1, Some());
        memory.Keep(2, Some());
        Assert.Same(memory.Ask(1, out _), memory.Ask(2, out _));
    }

    [Fact]
    public void What_was_learned_is_forgotten_when_it_has_become_much()
    {
        var memory = new MatrixMemory();
        var answer = Some();
        for (var key = 1; key < 1 << 17; key++) memory.Keep((UInt128)key, answer);
        Assert.NotNull(memory.Ask(1, out _));
        memory.Keep(1 << 17, answer);
        Assert.Null(memory.Ask(1, out _));
    }

    private static AskedGear QuestionOf(MatrixMemory memory, int key)
    {
        Assert.Null(memory.Ask((UInt128)key, out var question));
        return question!;
    }
}
