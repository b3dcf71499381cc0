using System.Net;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.Web.HtmlRendering;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.JSInterop;
using Shaftwright.JobFile;
using Shaftwright.Pages.Bench;
using Shaftwright.Pages.Cards;
using Shaftwright.Pages.Doors;
using Shaftwright.Pages.Outbox;

namespace Shaftwright.Pages.Tests;

/// <summary>A hand at a door that is opened on a job: the page itself, its shelf and its draft, without a browser. It types, leaves
/// the box, and waits until that is on the disk.</summary>
internal sealed class Hand : IAsyncDisposable
{
    private const string JobId = "1";

    private readonly Memory _memory = new();
    private readonly JobShelf _shelf;
    private readonly ServiceProvider _services;
    private readonly Maker _maker = new();
    private HtmlRenderer? _room;
    private HtmlRootComponent _drawn;
    private DoorPage? _door;
    private string? _job = JobId;

    private Hand()
    {
        _services = new ServiceCollection()
            .AddSingleton<IJSRuntime>(_memory)
            .AddSingleton<NavigationManager, Way>()
            .AddSingleton<IComponentActivator>(_maker)
            .AddSingleton<DeviceStore>()
            .AddSingleton<Preferences>()
            .AddSingleton<JobShelf>()
            .AddSingleton(TimeProvider.System)
            .AddSingleton<Sender>()
            .AddSingleton<BenchClock>()
            .AddSingleton(new HttpClient(new NoLaptop()) { BaseAddress = new Uri("http://bench/") })
            .AddSupplyValueFromQueryProvider()
            .BuildServiceProvider();
        _shelf = _services.GetRequiredService<JobShelf>();
    }

    /// <summary>The door it stands at.</summary>
    public DoorPage Door => _door ?? throw new InvalidOperationException("No door is open.");

    /// <summary>The job as it is kept on the device.</summary>
    public JsonObject Document => _shelf.Find(JobId)!.Json;

    /// <summary>What was measured and decided, as it is kept on the device.</summary>
    public Job Job => _shelf.Find(JobId)!.Job;

    /// <summary>A job from the stages of its file.</summary>
    public static Job Read(string stages) =>
        JobJson.Read((JsonObject)JsonNode.Parse(Whole(stages))!).Document!.Job;

    /// <summary>A job as its file says it.</summary>
    public static string Written(Job job) =>
        JobJson.WriteObject(JobDocument.Empty with { Job = job }).ToJsonString();

    /// <summary>Opens a door on a job.</summary>
    /// <param name="stages">The job file's stages.</param>
    /// <param name="query">What stands behind the address's question mark.</param>
    /// <param name="at">The question; null for the first.</param>
    public static async Task<Hand> At<TDoor>(string stages, string query = "", string? at = null)
        where TDoor : DoorPage
    {
        var hand = new Hand();
        hand._memory.Arrives(JobId, Whole(stages));
        await hand._services.GetRequiredService<DeviceStore>().Open();
        await hand._shelf.Load();
        await hand.Open<TDoor>(query, at);
        return hand;
    }

    /// <summary>Opens a door without a job.</summary>
    /// <param name="at">The question; null for the first.</param>
    public static async Task<Hand> Without<TDoor>(string? at = null)
        where TDoor : DoorPage
    {
        var hand = new Hand { _job = null };
        await hand._services.GetRequiredService<DeviceStore>().Open();
        await hand._shelf.Load();
        await hand.Open<TDoor>(at: at);
        return hand;
    }

    /// <summary>Leaves the door, if one is open, and opens one anew.</summary>
    public async Task Open<TDoor>(string query = "", string? at = null)
        where TDoor : DoorPage
    {
        await Shut();
        ((Way)_services.GetRequiredService<NavigationManager>()).Go(query);
        _room = new HtmlRenderer(_services, NullLoggerFactory.Instance);
        var given = ParameterView.FromDictionary(
            new Dictionary<string, object?>
            {
                [nameof(DoorPage.JobId)] = _job,
                [nameof(DoorPage.At)] = at,
            }
        );
        _drawn = await _room.Dispatcher.InvokeAsync(() => _room.RenderComponentAsync<TDoor>(given));
        _door = _maker.Made;
        Assert.True(Door.Ready);
    }

    /// <summary>Types into a box and leaves it. The unit is the field's own where none is typed.</summary>
    public async Task Type(string key, string text)
    {
        await Do(() =>
        {
            Door.Draft.Settle();
            Door.Draft.Set(key, text);
            Door.Draft.Settle();
        });
    }

    /// <summary>The same, where the job will not take it.</summary>
    public async Task Refused(string key, string text)
    {
        await _room!.Dispatcher.InvokeAsync(() =>
        {
            Door.Draft.Settle();
            Door.Draft.Set(key, text);
            Door.Draft.Settle();
        });
        await Door.Kept;
        Assert.NotNull(Door.Trouble);
    }

    /// <summary>Works a part of the page that is on the screen.</summary>
    public Task Use<TPart>(Action<TPart> how)
        where TPart : class, IComponent => Do(() => how(_maker.Last<TPart>()));

    /// <summary>Takes the last change back.</summary>
    public Task Undo() => Do(() => Door.Draft.Undo());

    /// <summary>Another device changes the job.</summary>
    public async Task Elsewhere(Action<JsonObject> change)
    {
        var document = (JsonObject)Document.DeepClone();
        change(document);
        _memory.Arrives(JobId, document.ToJsonString());
        if (_room is null)
        {
            await _shelf.Refresh();
            return;
        }
        await Do(() => { });
        await _room.Dispatcher.InvokeAsync(_shelf.Refresh);
    }

    /// <summary>What the door shows under a key.</summary>
    public string Shown(string key) => Door.Draft[key];

    /// <summary>True while something typed here is not part of the job.</summary>
    public bool Leaves => _memory.Drafts.Count > 0;

    /// <summary>The screen as it is by now, in HTML with its signs as they are.</summary>
    public Task<string> Screen() =>
        _room!.Dispatcher.InvokeAsync(() => WebUtility.HtmlDecode(_drawn.ToHtmlString()));

    /// <summary>The job's route card, opened beside the door.</summary>
    public async Task<string> Card()
    {
        await using var room = new HtmlRenderer(_services, NullLoggerFactory.Instance);
        var given = ParameterView.FromDictionary(
            new Dictionary<string, object?> { [nameof(JobPage.JobId)] = JobId }
        );
        return await room.Dispatcher.InvokeAsync(async () =>
            WebUtility.HtmlDecode((await room.RenderComponentAsync<JobPage>(given)).ToHtmlString())
        );
    }

    /// <summary>The job's file: what is evaluated when nobody stands at a door.</summary>
    public JobResult Evaluated() => Workflow.Evaluate(Job);

    public async ValueTask DisposeAsync()
    {
        await Shut();
        await _services.DisposeAsync();
    }

    private async Task Do(Action what)
    {
        await _room!.Dispatcher.InvokeAsync(what);
        await Door.Kept;
        Assert.Null(Door.Trouble);
    }

    /// <summary>Leaves the door.</summary>
    public async Task Shut()
    {
        if (_door is not null)
            await _door.Kept;
        if (_room is not null)
            await _room.DisposeAsync();
        _room = null;
        _door = null;
    }

    private static string Whole(string stages)
    {
        var document = JsonNode.Parse(stages)!.AsObject();
        document["format"] = 1;
        document["name"] = "Curlew";
        Assert.Empty(JobJson.Read(document).Refusals);
        return document.ToJsonString();
    }

    /// <summary>No laptop answers.</summary>
    private sealed class NoLaptop : HttpMessageHandler
    {
        protected override Task<HttpResponseMessage> SendAsync(
            HttpRequestMessage request,
            CancellationToken cancellationToken
        ) => throw new HttpRequestException("Nobody is there.");
    }

    /// <summary>Hands the page out that was made, as well as making it.</summary>
    private sealed class Maker : IComponentActivator
    {
        private readonly List<IComponent> _made = [];

        public DoorPage? Made => Last<DoorPage>();

        /// <summary>The last of a kind that was made, which is the one on the screen.</summary>
        public TPart Last<TPart>()
            where TPart : class => _made.OfType<TPart>().Last();

        public IComponent CreateInstance(Type componentType)
        {
            var made = (IComponent)Activator.CreateInstance(componentType)!;
            _made.Add(made);
            return made;
        }
    }

    private sealed class Way : NavigationManager
    {
        private const string Base = "http://bench/";

        public Way() => Initialize(Base, Base);

        public void Go(string query) => Uri = Base + "?" + query;

        protected override void NavigateToCore(string uri, NavigationOptions options) =>
            Uri = ToAbsoluteUri(uri).AbsoluteUri;
    }
}
