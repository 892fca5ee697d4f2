"""Given names that people write beside what is theirs; from memory, many lands, common practice, no source.

A name that is also a food's word or a kind of one (basil, ginger, charlotte, victoria) counts only where its form says
that it is a person's ('s, brackets).
"""

_WRITTEN = """
timmy benny donnie mickey micky abbie bobbie tillie polly wally suzie maisie mattie carly karly sammy mindy gav baz
gaz shaz daz davey mikey stevie megan nia ama esi sade wei xin ying sora maude lise javi olha taras bohdan chad tommy
aaliyah aarav aaron abbas abbu abby abdul abena abi abigail abiola abu abuela abuelo achieng achilleas adaeze adam
addison ade adebayo adele aditi aditya adnan adrian adwoa afonso agata agnes agneta agnieszka agus ahmad ahmed aidan
aiden aidyn aiko ailbhe ailidh ailsa aine ainhoa aino aisha aisling aitor aiysha akash akinyi akira akosua akshay al
alain alan alana alasdair alba albert alberto alec alejandra alejandro aleks aleksandr aleksandra alessandro alessia
alex alexa alexander alexandra alexandros alexis alfie alfred ali alice alicia alicja alina alison alistair aliyah
almudena alvaro aly alya alyssa amaia amaka amal amanda amani amara amber amelia amelie ameya amina amir amit amita
amma ammi amr amrit amy ana anais anand ananya anastasia anastasios anders andrea andreas andrei andrew andrzej andy
aneta angela angeliki angelo angie angus ania anika aniket anil anisa anita anja anjali anjana anke ankit ankita ann
anna annabel anne anneke annette annie annika anouk anshul antek anthony antoine antoinette anton antonia antonio
antti anuj anya aoife aparna appa april araceli arash aravind archana archie ari ariana ariel arjun arlo armando
arnaud arnav arne arnold arthur artur arturo arun arvind asha asher ashley ashlyn ashok ashton ashwin asier asif aslak
aspasia astri astrid athena attila audrey auntie aunty aurelie austin ava avery axel ayaka ayanda ayesha ayman ayo
ayse ayumi ayush aziz baba babcia balazs balwinder baptiste barbara barbora barney barry bart bartek bartosz basia
bassam bayu bazza bea beata beate beatrice beatriz beau becca becky begona belen bella ben bengt benjamin benno benoit
bentley bernadette bernard bernd bernice bernie bert bertha beth bethan bethany beto betsy bettina betty bev bhai
bhavesh bhavna bianca bibi bilal bill billie billy birgit birgitta birte bisi bjarne bjorn blake blathnaid bob bobby
bodil bogdan bogdana bongani bonnie boris borja bosse bozena brad braden bradley brandon branka brantley branwen
braxton brayden brenda brendan brent brett brian brid bridget bridie brigitte britt britta brock bronwyn brooke
brooklyn bruce bruna bruno bryan bryony bubba buddy budi buhle bukola busisiwe byron cailean caio caitlin caleb callum
calum cameron camila camille camryn candela caoimhe cara carl carla carlo carlos carlota carmen carol carole carolina
caroline carrie carsten carter carys casey cassidy catarina cath cathal catherine cathy catrin catriona cayetana
cecilia cedric celia celine cerys chantal chara charis charles charlie chayo chen cheryl chetan cheyenne chiamaka
chidi chidinma chika chinedu chioma chloe chris chrissie christian christina christine christoph christophe
christopher christos chrysa chuck chuy cian ciara ciaran cillian cindy claire clara clarence claude claudia clemence
clement cliff clifford clive clyde cody colette colin colm colton conceicao connie connor conor coralie corentin
corinna corinne cormac costas courtney craig cristina curtis cynthia daan dadi dafydd dagmar daiki daisy daithi dakota
dale damian damien damilola dan dana daniel daniela danielle danny danuta daphne darek dariush dariusz darla darlene
darnell darragh darren dave david davo dayo dazza dean deandre deb debbie deborah declan deepa deepak deepika deirdre
delbert delia della delphine delyth denis denise deniz dennis derek dermot deshawn desmond despina detlef dev devika
devon dhruv diana diane diarmuid dida didi didier diego dieter dietmar dilwyn dilys dimas dimitra dimitri dimitrios
dimitris dina dinah dineo dirk divya dmytro dolores dom dominic dominik dominique don donal donald donna donnacha
donncha dora doreen doris dorota dorothy doug dougie douglas dragos duane duarte duncan dusan dustin dwayne dwight
dylan eabha eamon eamonn earlene easton ebba eberhard ebru ebuka ece ed eddie edith edna eduarda eduardo edward edwin
edyta eero eeva efren efua egle eileen eilidh eimear einar eira eirian eirik eirini eithne eivind ekow elaine eleanor
eleftheria elena eleni eleri eli elif elijah elin elisa elise eliska eliza elizabeth elke ella ellen ellie elliot
elliott ellis elmarie elmer elodie eloi elsa elsie elwyn elzbieta emeka emer emerson emil emilia emilie emily emma
emmanuel emmanuelle emmett emre emrys encarna enda endah enrique eoghan eoin eric erica erik erin ernest ernst eskil
esme espen esperanza esra esteban estelle esther eszter ethan ethel etienne etta euan eugene eugenie eunice eunji eva
evan evangelia evangelos eve evelyn evie ewa ewan ewelina ewen ezra fabiana fabien fabio fabrice fadi faisal faith
farah farhan farid farida fatima fatma fatou felicity felix femi feng fergus fernanda fernando ffion fiachra fiete
filip finbarr finch finlay finn fintan fiona fionn fionnuala fitri flavia flo flora florian florin floyd folake fotini
fotis fran frances francesca francesco francis francisca francisco francois francoise frank frankie frauke fred
freddie freddy frederic freya frida friederike friedrich frode fumiko funke funmi gabe gabor gabriel gabriela gaelle
gaetan gail galih gareth garrett gary gaurav gautam gavin gazza gemma genevieve geoff georg george georgia georgie
georgios geraint gerald gerard gerd gerda gerry gert gethin ghada ghislaine giannis gideon giles gill gilles gillian
gina ginette giorgio giorgos giovanni gisela gita giulia gizem gladys glen glenn glenys gloria goncalo gonzalo gopal
goran gordon gosia gosta grace graciela graeme grainne grandad granddad grandma grandpa grayson greg gregor greta
greyson grzegorz guadalupe gugu guilherme guillaume guillermo gunilla gunnar gunner gunter gunther guro gurpreet gus
gustavo guylaine gwen gwenllian gwilym gwyn gwyneth haakon habib hadi hadiza hadley hakan hakon haley halina halmoni
halvor hamish hamza hana hanan haneul hanka hanna hannah hanne hannelore hannu hans harald haris harish harold harper
harpreet harriet harris harry harsh hartmut haruka haruto harvey hasan hassan hatem hattie hauke hayden hazel heather
hector hedda hege heidi heike heikki heiko heinrich helen helena helene helga helmut hemant hendra hennie henning
henrik henrique henry herbert herman herve hetal heulwen hilary hilda hildegard himanshu hiro hiroko hiroshi hisham
hitesh hjalmar holger holly honza horst howard hubby hudson hugh hugo hugues huguette huma humphrey huong hussain
hussein huw hyejin hyunwoo hywel ian iarla ibrahim ida idris ieuan ifan ifeanyi ifeoma ignacio igor ihab ike iker
ilaria ildiko ilias ilse ilze imad imelda imke imogen imran imtiaz inaki indah ines inez inge inger ingo ingrid
ingvild inmaculada innes intan ioana ioanna ioannis iolo iona ionut ira irene irina iris irmgard iryna isa isaac
isabel isabella isabelle isha ishaan ishita ising isla ismail istvan itumeleng itzel itziar ivan ivana ivar ivy iwan
iwona izabela jacek jackie jacko jackson jacob jacques jacqui jade jaden jadwiga jaime jake jakub jalen jamal james
jamie jamila jan jana jane janet janice janis jannik janusz jared jarek jarlath jase jasmin jason jasper jaspreet
jatin javed javier jaxon jay jayden jayesh jayla jean jeanette jeanne jeff jelena jen jenna jennie jennifer jenny jens
jeremy jermaine jerome jerry jess jesse jessica jessie jiahao jide jihoon jill jim jimmy jirka jisoo jiwoo jiyeon jo
joan joana joanna joanne joao joaquin jocelyne jochen jodi jody joe joel johan johanna johannes john johnny johno joko
jolanta jolene jon jonah jonas jonathan jordan jordi jorg jorge jorgen joris jorunn jose josee josef josefina joseph
josephine josh joshua josie jostein joyce juan juana judith judy juha jukka jules julia julian julie julien juliet
julio jun june junior jurek jurgen justin justyna jutta jyoti kabelo kabir kacper kade kaden kagiso kai kaisa kaitlyn
kaito kajal kaleb kalliopi kalpana kamal kamau kamila kamran kaori kara karabo karen karim karima karin karl karla
karol karolina karsten karthik kartik kasia kaspars kat katalin katarzyna kate katerina kateryna katharina katherine
kathleen kathrin kathy katie katja katlego katrin katrina katy kavita kavya kay kayden kayla kaylee kayleigh kazuki
keiko keira keisha keith kelechi kelly kelsey kelvin kemi ken kendall kendra kenji kenneth kenny kenta kenzie kerem
kerry kerstin ketan kev kevin kez khadija khaled khalid khanyi khanyisile kiera kieran kim kinsley kira kiran kirsi
kirsten kirstin kirsty kjell kjersti klaus knut kobus kofi kojo konrad kostas kris krishna krista kristen kristin
kristina kristoffer krisztina krystyna krzys krzysztof ksenia kuba kulwinder kumar kunal kurt kwabena kwame kwasi
kwesi kyle kylie kyoko kyriakos lachie lachlan laia laila lakisha lakshmi lalit lalo lamar lana landon laoise lara
larisa larry lars lasse laszlo latoya laura lauren laurence laurent lauri laurie layla leah leanne lebo lebogang lee
lefteris leif leila leire lena lene lenka lennart lenny leo leon leona leonard leonie leonor lerato leroy lesley
leslie lestari lester leszek leticia levi lewis lex leyla liadh liam lian libby liezl lila lilian lily lin lina linda
lindiwe lindsay lindsey linh linnea lionel lisa lisbeth liv liz liza lizzie llinos llyr logan lois lola lorcan lorenzo
loretta lorna lorraine lothar lou louis louisa louise lourdes lowri luana luann lubna luc luca lucas lucia lucie
lucien lucille lucinda lucy ludmila ludovic ludwig luis luisa luka lukas lukasz luke luna lupe lupita lurdes lutz
lwazi lydia lyn lynette lynn mabel macarena macca maciej maciek mackenzie maddie maddy madeleine madison mads mae
maelle maeve mafalda magda maggie magnus mahesh mahmoud mai maia maike maire mairead mairi maite maja majid makoto
maksim malachy malak malcolm malgorzata malik malin mandla mandy manfred manish manoj manolis manolo manon manos
manpreet mansi mansour mantas manuel mara marc marcel marcella marcia marcin marco marcos marcus mared mareike marek
margaret margarida margit margot maria mariam marian mariana marianne maricela marie mariko marina mario marion marisa
marisol marit mariusz marja marjorie mark marko markus marlene marlize marlon marta martha martina martine marty
marvin mary maryam marzena matej mateo mateusz mathieu mathilda matilda matilde mats matt matteo matthew matthias
matti mattis maureen maurice mauricio mauro mavis max maxime maxine maya mayumi mbali mckenna mckenzie mechthild meera
meg megha megumi mehmet mei meike meirion mel melanie melissa melvin menna mercedes merche meredith mererid merete
merle mert mette mhairi mia micah michael michal michalina michalis michele michelle miguel mihai miho mika mikael
mike mikhail mikko mila milan mildred miles milica millie milo milos milton mimi mina ming minh minho minji minjun
minna minseo miranda mireia mirek miriam mirjana misaki mischa missus mitch mitesh mizuki mo mohamed mohammed mohan
mohit moira molly mona monica monika monique montse morag moray morgan moritz morris morten moses mounir mpho muhammad
muireann mukesh murat murdo murray mustafa mwangi myfanwy mykola mylene myra myrtle nabil nadezhda nadia nadim nadine
nadja naeem nagore naledi nana nanami nancy nandini nani naoise naoki naoko naomi nasreen nasser nat natalia natalie
natasha nate nathalie nathan nathaniel naveed naveen navya neha neil nektarios nele nell nellie nelly nelson nenad
nerea nerys nevaeh neve ngoc ngozi nguyet nhung niall niamh nicholas nick nicky nico nicola nicolas nicole niels nigel
nikhil nikita nikki nikola nikolaos nikoleta nikos nilesh nils nina ninian nining nisha nitin njeri nkechi nnamdi
nneka noa noah noel noelia noemie nolan noluthando nomsa nomvula nonna nonno nonso nora norbert noriko norma norman
normand nthabiseng ntombi nuala nuno nuria obi obinna octavia oddvar odette ofelia oisin oksana ola olaf oleg
oleksandr olena olga oli oliver olivia olivier ollie olu oluwaseun olwen oma omar ondrej oona oonagh opa orla orlaith
orsolya osama oscar osian oskar osman otavio otieno otis otto outi owain owen ozlem pablo paco paddy padraic padraig
paige paisley paivi palesa pallavi pam pamela panagiotis pancho pankaj panos paola paolo papa pappou paqui paramjit
paraskevi parisa parker parth parul pascale pat patience patrice patricia patrick patryk patty paul paula paulina
paulo pavel pavlo pavlos pawel payal peadar pedro peggy pekka penelope penny percy pernille perry petar pete peter
petra petri petros petter peyton phil philip philippa philippe phillip phindile phoebe phuong phyllis pia pierre
pierrette pieter piotr piotrek pippa pirjo pooja poppy pradeep prakash pranav prashant pratik precious preeti presley
priscilla priya priyanka przemek purificacion putri putu quang quentin quinn quique quynh rachel radek radka raelynn
rafael rafal ragnhild rahul rainer raj raja rajan rajat rajesh rakesh ralf ralph raluca ramesh ramon ramona ramya rana
randall randi randy rani rania ranjit raphael raquel rashid rashmi rasmus ratna raul ravi ray raymond razvan reagan
rebecca reece reese refilwe refugio reggie reiko reiner reinhard rejean rena renata renate renaud rene renee reza
rhiannon rhodri rhona rhonda rhun rhydian rhys riaan ricardo rich richard rick ricky riikka rikke riko riley rima rita
ritika ritu riya rizky rob robbie robbo robert roberta roberto robin robyn rocco rod roddy rodney rodrigo roger rohan
rohini rohit roisin rokas roland roman ronald ronan ronnie rory rosa rosalie rosalind rosanna roscoe rosie ross
roxanne roxie roy ruairi ruaridh ruben ruby ruchi rudi rudiger ruediger rukhsana runar rupa rupert ruslan russell ruth
ryan rylan ryo ryota sabine sabrina sachin sadie sahar saira sakura salem salim sally salma salman sam samantha samar
sameer sameera samia samir samira samuel sandeep sandhya sandra sandy sanele sanjana sanjay sanne santiago santosh
saoirse sara sarah sasha saskia satish satoshi saul savita sawyer sbu scott seamus sean sebastian sebastien
sebastienne segun selin selina senan seoirse seojun seonaid serena sergei sergey sergi sergio serkan seth seulgi seun
shabnam shahid shalini shana shane shaniqua shankar shannon sharon shaun shauna shawn shazza sheena sheila shelby
sheldon shelley shelly sherman shikha shilpa shirin shirley shivam shona shota shreya shreyas shruti shubham sian
sibongile sibusiso sid siddharth sidney siew sifiso sigrid silas silje silke silvia simao simmo simon simone simphiwe
simran sindi sindre sinead siobhan sion sioned sipho sissel siti sivert siwan siya siyabonga sizwe skylar slava slawek
smita sneha snezana socorro sofia solene solomon solveig sonal sonali sonia sonja sonny sooyoung sophia sophie soraya
sorcha soren sotiris spiros spyros srinivas stacey stacy stan staszek stavros stavroula stefan stefania stefano
steffen steffi stelios stella steph stephane stephanie stephen steve steven stevo stewart stian stig stine stipe
struan stu stuart su subhash sudha sue sujata sujin suki sumit sunanda sunil sunita suresh susan susana susanna susie
suzanne svein sven svenja svetlana svitlana swantje sybil sylvain sylvia sylvie sylwia synnove szymon tabitha tadeusz
tadhg tahir takashi takeshi takis tamara tamer tammy tamsin tania tanner tante tanvi tanya tapio tariq tarun tasha
tasneem tatiana tatyana tauseef taylor tayo tebogo ted teddy tega tegan teguh tegwen tejas teleri telma temi teresa
tereza terje terrell terrence terry tess tessa teta thabang thabiso thabo thanasis thandeka thandi thandiwe thando
thanos thea thelma themba thembi theo theodora theodoros theresa thiago thierry thijs thomas thommo thorsten tia tiago
tiana tiffany tiina tilman tim tina tobi tobias toby todd tolga tom tomas tomasz tomek tommaso tommy tomoko tomos
tomoya toni tony tonya torben torgeir torsten tosin tove toyin tracey tracy travis trent trevor trey tricia trine
trini trish trisha tristan trond trudy trygve tsepo tshepo tsuyoshi tuan tucker tumelo tunde tuomas turid tushar tuva
tuyet tyler tyrell tyrone uche uday udo ulf ulla ulrich ulrika ulrike uma umar umut una uncle unni ursula ute uwe
vaishali valentin valentina valerie vanda vandana vanessa vangelis varun vasanth vasco vasiliki vasilis vassilis vasyl
veena vegard velma venkat vera verity vern vernon veronica veronique vesna vic vicente vicki vicky victor vidar vidya
viggo vijay vikas vikram viktor vinay vince vincent vineet vinny vinod viola violet virgil virginia virginie vishal
vitor vivek vivian vlad vlada vladimir vojta volker volodymyr vusi wade wael wahyu wai walid wallace walter waltraud
wambui wanda wanjiku wanjiru warren wayan waylon wayne wendell wendy wenwen werner wes wesley weston whitney wiebke
wiesia wiktor wilbur wilf wilhelm will willard willem william willow wilma winfried winnie winston wojciech wojtek
wolfgang woodrow wren wulan wyatt xabi xander xavier xaviere xiaoming ximena xiomara xiu xolani xose yael yago yahya
yan yannick yannis yanti yara yasemin yash yasmin yasmine yassin yaw yejin yemi yesenia yewande yiannis yiayia yifan
yiorgos yoko yolanda yoona yoonseo yosef yoshi yotam youssef yui yuka yuki yuko yulia yumi yuna yuni yuri yusuf yuto
yvan yves yvette yvon yvonne zac zach zachary zahra zainab zane zanele zara zbigniew zbyszek zeca zeinab zelda zeljko
zeynep ziad zihan zinhle zodwa zoe zoey zofia zoi zola zoltan zoran zosia zsolt zubair zuhal zuri zuzanna zuzia zuzka
"""
GIVEN_NAMES = frozenset(_WRITTEN.split())
