"""Given names that people write beside what is theirs; from memory, many lands, common practice, no source.

A name that is also a food's word or a kind of one (basil, ginger, charlotte, victoria) counts only where its form says
that it is a person's ('s, brackets).
"""

_WRITTEN = """
aaliyah aarav aaron abbas abbu abby abdul abena abi abigail abiola abu abuela abuelo achieng achilleas adaeze adam ade
adebayo adele aditi aditya adnan adrian afonso agata agnes agneta agnieszka agus ahmad ahmed aidan aiden aidyn aiko
ailbhe ailidh ailsa aine ainhoa aino aisha aisling aitor aiysha akash akinyi akira akshay al alain alan alana alasdair
alba albert alberto alec alejandra alejandro aleks aleksandra alessandro alessia alex alexa alexander alexandra
alexandros alexis alfie alfred ali alice alicia alicja alina alison alistair aliyah almudena alvaro aly alya alyssa
amaia amaka amal amanda amani amara amber amelia amelie ameya amina amir amit amita amma ammi amr amy ana anais anand
ananya anastasia anastasios anders andrea andreas andrei andrew andrzej andy aneta angela angeliki angelo angie angus
anika aniket anil anisa anita anja anjali anjana anke ankit ankita ann anna annabel anne annette annie annika anouk
anshul anthony antoine antoinette anton antonia antonio antti anuj anya aoife aparna appa april araceli aravind archie
ari ariana ariel arjun arlo arnaud arnav arne arnold arthur arturo arun arvind asha asher ashley ashok ashton ashwin
asier asif aslak aspasia astri astrid athena audrey auntie aunty aurelie austin ava axel ayaka ayanda ayesha ayman ayo
ayumi ayush aziz baba babcia baptiste barbara barney barra barry bart bartek basia bassam bayu bazza bea beata beate
beatrice beatriz beau becca becky begona belen bella ben bengt benjamin benno benoit bernadette bernard bernd bernie
bert beth bethan bethany beto bettina betty bev bhai bhavna bianca bibi bilal bill billie billy birgit birgitta birte
bisi bjarne bjorn blake blathnaid bob bobby bodil bogdan bogdana bongani bonnie boris borja bosse bozena brad bradley
brandon branwen braxton brayden brenda brendan brent brett brian brid bridget bridie brigitte britt britta brock
bronwyn brooke bruce bruna bruno bryan bryony budi buhle bukola busisiwe byron cailean caio caitlin caleb callum calum
cameron camila camille camryn candela caoimhe cara carl carla carlo carlos carmen carol carolina caroline carrie
carsten carter carys casey cassidy catalina catarina cath cathal catherine cathy catrin catriona cayetana cecilia
cedric celia celine cerys chantal chara charis charles charlie chen cheryl chetan chiamaka chidi chidinma chika chinedu
chioma chloe chris chrissie christian christina christine christoph christophe christopher christos chrysa chuck cian
ciara ciaran cillian cindy claire clara claude claudia clemence clement cliff clive colette colin colm colton conceicao
connie connor conor corentin corinna corinne cormac costas courtney craig cristina curtis cynthia dadi dafydd dagmar
daiki daisy daithi dale dalia damian damien damilola dan dana daniel daniela danielle danny daphne dariusz darla
darlene darnell darragh darren dave david davo dayo dazza dean deandre deb debbie deborah declan deepa deepak deepika
deirdre delia della delphine delyth denis denise dennis derek dermot deshawn desmond despina detlef dev devika devon
dhruv diana diane diarmuid dida didi didier diego dieter dietmar dilwyn dilys dimas dimitra dimitri dimitrios dimitris
dina dinah dineo dirk divya dmytro dolores dom dominic dominik dominique don donal donald donna donnacha donncha dora
doreen doris dorota dorothy doug dougie douglas duane duarte duncan dwayne dylan eabha eamon eamonn earlene easton ebba
eberhard ebuka ed eddie edith eduarda eduardo edward edwin edyta eero eeva efua eileen eilidh eimear einar eira eirian
eirik eirini eithne eivind ekow elaine eleanor eleftheria elena eleni eleri eli elif elijah elin elisa elise eliza
elizabeth elke ella ellen ellie elliot elliott elodie elsa elsie elwyn elzbieta emeka emer emil emilia emilie emily
emma emmanuel emmanuelle emmett emrys encarna enda endah enrique eoghan eoin eric erica erik erin ernest ernst eskil
esme espen esra esteban esther ethan etienne etta euan eugene eugenie eunice eunji eva evan evangelia evangelos eve
evelyn evie ewa ewan ewelina ewen ezra fabiana fabien fabio fabrice fadi faisal faith farah farhan farid fatima fatma
fatou felicity felix femi feng fergus fernanda fernando ffion fiachra filip finbarr finlay fintan fiona fionn fionnuala
fitri flavia flo flora florian folake fotini fotis fran frances francesca francesco francis francisca francisco
francois francoise frank frankie frauke fred freddie freddy frederic freya frida friederike friedrich frode fumiko
funmi gabe gabi gabriel gabriela gaelle gail galih gareth garrett gary gaurav gautam gavin gazza gemma genevieve geoff
georg george georgia georgie georgios geraint gerald gerard gerd gerda gerry gethin ghada ghislaine giannis giles gill
gillian gina giorgio giorgos giovanni gisela gita giulia gladys glen glenn glenys gloria goncalo gonzalo gopal goran
gordon gosta grace graeme grainne grandad granddad grandma grandpa grayson greg gregor greta greyson grzegorz guadalupe
gugu guilherme guillaume guillermo gunilla gunnar gunner gunter gunther guro gus gustavo gwen gwenllian gwilym gwyn
gwyneth haakon habib hadi hadiza hadley hakan hakon haley halina halmoni halvor hamish hamza hana hanan haneul hanna
hannah hanne hannelore hannu hans harald haris harish harriet harris harry harsh hartmut haruka haruto harvey hasan
hassan hatem hattie hauke hayden hazel heather hector hedda hege heidi heike heikki heiko heinrich heinz helen helena
helene helga helmut hemant hendra henning henrik henrique henry herbert herve heulwen hilary hilda hildegard himanshu
hiro hiroko hiroshi hisham hjalmar holger holly horst howard hubby hugh hugo hugues huma humphrey huong hussain hussein
huw hyejin hywel ian iarla ibrahim ida idris ieuan ifan ifeanyi ifeoma ignacio igor ihab ike iker ilaria ilias ilse
imad imke imogen imran inaki indah ines inez inge inger ingo ingrid ingvild inmaculada innes intan ioana ioanna ioannis
iolo iona ira irene irina iris irmgard iryna isa isaac isabel isabella isabelle isha ishaan ishita isla ismail
itumeleng itziar ivan ivana ivar ivy iwan iwona izabela jacek jackie jacko jacob jacques jacqui jade jaden jadwiga
jaime jake jakub jalen jamal james jamie jamila jan jana jane janet janice janusz jared jarek jarlath jase jasmin jason
jasper jatin javier jaxon jay jayden jayla jean jeanette jeanne jeff jen jenna jennie jennifer jenny jens jeremy
jermaine jerome jerry jess jesse jessica jessie jide jihoon jill jim jimmy jisoo jiwoo jo joan joana joanna joanne joao
joaquin jocelyne jochen jodi jody joe joel johan johanna johannes john johnny johno joko jolanta jolene jon jonas
jonathan jordan jordi jorg jorge jorgen jorunn jose josee josef josefina joseph josephine josh joshua josie jostein
joyce juan juana judith judy juha jukka jules julia julian julie julien juliet julio jun june jurgen justin justyna
jutta jyoti kabelo kabir kacper kade kaden kagiso kai kaisa kaitlyn kaito kajal kaleb kalliopi kamal kamau kamila
kamran kaori kara karabo karen karim karima karin karl karla karolina karsten karthik kartik kasia kat katarzyna kate
katerina kateryna katharina katherine kathleen kathrin kathy katie katja katlego katrin katrina katy kavita kavya kay
kayla kayleigh kazuki keiko keira keisha keith kelechi kelly kelsey kelvin kemi ken kendra kenji kenneth kenny kenta
kenzie kerry kerstin kev kevin kez khadija khaled khalid khanyi khanyisile kiera kieran kim kira kiran kirsi kirsten
kirstin kirsty kjell kjersti klaus knut kofi kojo konrad kostas kris krishna krista kristen kristin kristina kristoffer
krystyna krzys krzysztof ksenia kumar kunal kurt kwabena kwame kwasi kwesi kyle kylie kyoko kyriakos lachie lachlan
laia laila lakisha lakshmi lalit lamar lana landon laoise lara larisa larry lars lasse laszlo latoya laura lauren
laurence laurent lauri laurie layla leah leanne lebo lebogang lee lefteris leif leila leire lena lene lennart leo leon
leona leonard leonie leonor lerato leroy lesley leslie lestari leszek levi lewis lex leyla liadh liam lian libby lila
lilian lily lin lina linda lindiwe lindsay lindsey linh linnea lionel lisa lisbeth liv liz liza lizzie llinos llyr
logan lois lola lorcan lorenzo loretta lorna lorraine lothar lou louis louisa louise lourdes lowri luana luann lubna
luca lucas lucia lucie lucille lucinda lucy ludmila ludovic ludwig luis luisa luka lukas lukasz luke luna lutz lwazi
lydia lyn lynette lynn mabel macarena macca maciej maciek mackenzie maddie maddy madeleine mads mae maeve mafalda magda
maggie magnus mahesh mahmoud mai maia maike maire mairead mairi maite maja majid makis makoto maksim malachy malak
malcolm malgorzata malik malin mandla mandy manfred manish manoj manolis manolo manon manos mansi mansour manuel mara
marc marcel marcella marcia marcin marco marcos marcus mared mareike margaret margarida margit margot maria mariam
marian mariana marianne marie mariko marina mario marion marisa marisol marit mariusz marja marjorie mark marko markus
marlene marlon marta marte martha martina martine marty marvin mary maryam marzena mateo mateusz mathieu mathilda
matilda matilde mats matt matteo matthew matthias matti maureen maurice mauricio mauro mavis max maxime maxine maya
mayumi mbali mckenna mechthild meera megha megumi mehmet mei meike meirion mel melanie melissa melvin menna mercedes
merche meredith mererid merete merle mette mhairi mia micah michael michal michalina michalis michele michelle miguel
miho mika mikael mike mikhail mikko mila milan mildred miles millie milo mimi mina ming minh minho minji minjun minna
minseo miranda mireia miriam misaki mischa missus mitch mizuki mo mohamed mohammed mohan mohit moira molly mona monica
monika monique montse morag moray morgan morten moses mounir mpho muhammad muireann mukesh mungo murdo murray mustafa
mwangi myfanwy mykola mylene myra nabil nacho nadezhda nadia nadim nadine nadja naeem nagore naledi nana nanami nancy
nandini nani naoise naoki naoko naomi nasser nat natalia natalie natasha nate nathalie nathan nathaniel naveed naveen
navya neha neil nektarios nele nell nelly nelson nerea nerys nevaeh neve ngoc ngozi nguyet nhung niall niamh nicholas
nick nicky nico nicola nicolas nicole niels nigel nikhil nikita nikki nikolaos nikoleta nikos nilesh nils nina ninian
nining nisha nitin njeri nkechi nnamdi nneka noa noah noel noelia noemie nolan noluthando nomsa nomvula nonna nonno
nonso nora norbert noriko norma norman nthabiseng ntombi nuala nuno nuria obi obinna octavia oddvar odette oisin oksana
ola olaf oleg oleksandr olena olga oli oliver olivia olivier ollie olu oluwaseun olwen oma omar oona oonagh opa orla
orlaith osama oscar osian oskar osman otavio otieno otto outi owain owen pablo paddy padraic padraig paige paisley
paivi palesa pallavi pam pamela panagiotis pankaj panos paola paolo papa pappou paqui paraskevi parth pascale pat
patience patricia patrick patryk patty paul paula paulina paulo pavel pavlo pavlos pawel peadar pedro peggy pekka
penelope penny percy pernille perry pete peter petra petri petros petter peyton phil philip philippa philippe phillip
phindile phoebe phuong phyllis pia pierre pierrette piotr piotrek pippa pirjo pooja poppy pradeep prakash pranav
prashant pratik precious preeti priscilla priya priyanka przemek purificacion putri putu quang quentin quinn quynh
rachel radek raelynn rafael rafal ragnhild rahul rainer raj raja rajan rajat rajesh rakesh ralf ralph ramesh ramon
ramona ramya rana randall randi randy rani rania ranjit raphael raquel rashid rashmi rasmus ratna raul ravi ray raymond
reagan rebecca reece refilwe reggie reiko reiner reinhard rejean rena renate renaud rene renee reza rhiannon rhodri
rhona rhonda rhun rhydian rhys ricardo rich richard rick ricky riikka rikke riko rima rita ritika ritu rizky rob robbie
robbo robert roberta roberto robin robyn rocco rod roddy rodney rodrigo roger rohan rohini rohit roisin roland roman
ronald ronan ronnie rory rosa rosalind rosanna roscoe rosie ross roxanne roxie roy ruairi ruaridh ruben ruby ruchi rudi
rudiger ruediger runar rupa rupert ruslan russell ruth ryan ryo ryota sabine sabrina sachin sadie sahar saira sakura
salem salim sally salma salman sam samantha samar sameer sameera samir samira samuel sandeep sandhya sandra sandy
sanele sanjana sanjay santiago santosh saoirse sara sarah sasha saskia satish satoshi saul savita sawyer sbu scott
seamus sean sebastian sebastien sebastienne selina senan seoirse seojun seonaid serena sergei sergey sergi sergio seth
seun shalini shana shane shaniqua shankar shannon sharon shaun shauna shawn shazza sheena sheila shelby sheldon shelley
shelly shikha shilpa shirin shivam shona shota shreya shreyas shruti shubham sian sibongile sibusiso sid siddharth
sidney sifiso sigrid silje silke silvia simao simmo simon simone simphiwe sindi sindre sinead siobhan sion sioned sipho
sissel siti sivert siwan siya siyabonga sizwe skylar slava slawek smita sneha sofia solene solomon solveig sonal sonali
sonia sonja sooyoung sophia sophie soraya sorcha soren sotiris spiros spyros srinivas stacey stacy stan stavros
stavroula stefan stefania stefano steffen steffi stelios stella steph stephane stephanie stephen steve steven stevo
stewart stian stig stine struan stu stuart su subhash sudha sue sujata sujin suki sumit sunil sunita suresh susan
susana susanna susie suzanne svein sven svenja svetlana svitlana swantje sybil sylvain sylvia sylvie sylwia synnove
szymon tabitha tadeusz tadhg tahir takashi takeshi takis tamara tamer tammy tamsin tania tanner tante tanvi tanya tapio
tariq tarun tasha tatiana tatyana tayo tebogo ted teddy tega tegan teguh tegwen tejas teleri telma temi teresa terje
terrell terrence terry tess tessa thabang thabiso thabo thanasis thandeka thandi thandiwe thando thanos thea themba
thembi theo theodora theodoros theresa thiago thierry thomas thommo thorsten tia tiago tiana tiffany tiina tilman tim
timo tina tobi tobias toby todd tom tomas tomasz tomek tommaso tommy tomoko tomos tomoya toni tony tonya torben torgeir
torsten tosin tove toyin tracey tracy travis trent trevor trey tricia trine trini trish trisha tristan trond trudy
trygve tsepo tshepo tsuyoshi tuan tucker tumelo tunde tuomas turid tushar tuva tuyet tyler tyrell tyrone uche uday udo
ulf ulla ulrich ulrika ulrike uma umar una uncle unni ursula ute uwe vaishali valentin valentina valerie vanda vanessa
vangelis varun vasanth vasco vasiliki vasilis vassilis vasyl veena vegard venkat vera verity vern veronica veronique
vic vicente vicki vicky victor vidar vidya viggo vijay vikas vikram viktor vinay vince vincent vineet vinny vinod viola
violet virginia virginie vishal vitor vivek vivian vlad vlada vladimir volker volodymyr vusi wade wael wahyu wai walid
walter waltraud wambui wanda wanjiru warren wayan wayne wendy werner wes wesley whitney wiebke wiesia wiktor wilbur
wilf wilhelm will willem william willow winfried winnie winston wojciech wojtek wolfgang wulan xabi xander xavier
xaviere ximena xiu xolani yael yago yahya yan yannick yannis yanti yara yash yasmin yasmine yassin yejin yemi yewande
yiannis yiayia yiorgos yoko yolanda yoona yosef yoshi yotam youssef yui yuka yuki yuko yulia yumi yuna yuni yuri yusuf
yuto yvan yves yvette yvonne zac zach zachary zahra zainab zane zanele zara zbigniew zeca zeinab zelda zeynep ziad
zinhle zodwa zoe zoey zofia zoi zola zosia zuri zuzanna zuzia
"""
GIVEN_NAMES = frozenset(_WRITTEN.split())
